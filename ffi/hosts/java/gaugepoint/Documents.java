package gaugepoint;

import com.sun.jna.ptr.PointerByReference;

/** Documents in, reports out, both JSON; of gaugepoint.h. Generated from it; the test that compares it also writes it. */
public final class Documents {
    static {
        Gaugepoint.register(Documents.class);
    }

    private Documents() {
    }

    /**
     * Assesses a job document and gives its report, both JSON.
     *
     * @throws GaugepointException when the document is refused
     */
    public static String jobAssess(String document, boolean withWorking) {
        return jobAssess(Gaugepoint.bytes(document), withWorking);
    }

    /** jobAssess of UTF-8. */
    public static String jobAssess(byte[] document, boolean withWorking) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_job_assess(document, new Gaugepoint.SizeT(document.length), withWorking ? 1 : 0, given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_job_assess(byte[] document, Gaugepoint.SizeT documentLength, int withWorking, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Holds the limits of a printed sheet against themselves and gives the report, both JSON.
     *
     * @throws GaugepointException when the document is refused
     */
    public static String sheetCheck(String document) {
        return sheetCheck(Gaugepoint.bytes(document));
    }

    /** sheetCheck of UTF-8. */
    public static String sheetCheck(byte[] document) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_sheet_check(document, new Gaugepoint.SizeT(document.length), given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_sheet_check(byte[] document, Gaugepoint.SizeT documentLength, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Evaluates a measurement document and gives its report, both JSON: the readings and their differences
     * with the budget of each, to first
     *
     * @throws GaugepointException when the document is refused
     */
    public static String measure(String document, boolean withWorking) {
        return measure(Gaugepoint.bytes(document), withWorking);
    }

    /** measure of UTF-8. */
    public static String measure(byte[] document, boolean withWorking) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_measure(document, new Gaugepoint.SizeT(document.length), withWorking ? 1 : 0, given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_measure(byte[] document, Gaugepoint.SizeT documentLength, int withWorking, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Computes the hot fit of one piston in one bore and gives its report, both JSON: the clearance
     * everywhere and at temperature, its smallest value
     *
     * @throws GaugepointException when the document is refused
     */
    public static String fit(String document, boolean withWorking) {
        return fit(Gaugepoint.bytes(document), withWorking);
    }

    /** fit of UTF-8. */
    public static String fit(byte[] document, boolean withWorking) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_fit(document, new Gaugepoint.SizeT(document.length), withWorking ? 1 : 0, given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_fit(byte[] document, Gaugepoint.SizeT documentLength, int withWorking, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Evaluates a budget of uncertainty and gives its report, both JSON.
     *
     * @throws GaugepointException when the document is refused
     */
    public static String budgetEvaluate(String document) {
        return budgetEvaluate(Gaugepoint.bytes(document));
    }

    /** budgetEvaluate of UTF-8. */
    public static String budgetEvaluate(byte[] document) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_budget_evaluate(document, new Gaugepoint.SizeT(document.length), given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_budget_evaluate(byte[] document, Gaugepoint.SizeT documentLength, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Evaluates a stack of contributors and gives its report, both JSON: worst case, published forms,
     * moments, shares, exact probabilities outside
     *
     * @throws GaugepointException when the document is refused
     */
    public static String stackEvaluate(String document, boolean withWorking) {
        return stackEvaluate(Gaugepoint.bytes(document), withWorking);
    }

    /** stackEvaluate of UTF-8. */
    public static String stackEvaluate(byte[] document, boolean withWorking) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_stack_evaluate(document, new Gaugepoint.SizeT(document.length), withWorking ? 1 : 0, given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_stack_evaluate(byte[] document, Gaugepoint.SizeT documentLength, int withWorking, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Compares two jobs of one engine and gives the report, both JSON: what changed of every cylinder, how
     * fast, when limits of this job are reached
     *
     * @throws GaugepointException when the document is refused
     */
    public static String revisit(String document) {
        return revisit(Gaugepoint.bytes(document));
    }

    /** revisit of UTF-8. */
    public static String revisit(byte[] document) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_revisit(document, new Gaugepoint.SizeT(document.length), given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_revisit(byte[] document, Gaugepoint.SizeT documentLength, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

    /**
     * Assesses a job with every combination of values and gives the report, both JSON: a row for each
     * combination with what is to be shown, what
     *
     * @throws GaugepointException when the document is refused
     */
    public static String whatIf(String document) {
        return whatIf(Gaugepoint.bytes(document));
    }

    /** whatIf of UTF-8. */
    public static String whatIf(byte[] document) {
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_what_if(document, new Gaugepoint.SizeT(document.length), given.text, given.length, error), error);
        return given.taken();
    }

    private static native int gaugepoint_what_if(byte[] document, Gaugepoint.SizeT documentLength, PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);
}
