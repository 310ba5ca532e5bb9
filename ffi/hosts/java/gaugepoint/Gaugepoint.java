package gaugepoint;

import com.sun.jna.IntegerType;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.ByReference;
import com.sun.jna.ptr.PointerByReference;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * gaugepoint from Java: the C library behind it, with its errors as exceptions and its handles as objects to close. Java 11 or later, with JNA 5.
 *
 * The library gaugepoint_c is looked for in the folders of the property jna.library.path and where the system looks. The first use throws an
 * UnsatisfiedLinkError with the reason when it is missing or another one.
 */
public final class Gaugepoint {
    private static final String NAME = "gaugepoint_c";

    static {
        register(Gaugepoint.class);
    }

    private Gaugepoint() {
    }

    /** Binds the native methods of a class, once the library is known to be the right one. */
    static void register(Class<?> methods) {
        NativeLibrary library;
        try {
            library = NativeLibrary.getInstance(NAME);
        } catch (UnsatisfiedLinkError e) {
            throw new UnsatisfiedLinkError("the library " + NAME + " was not found: set -Djna.library.path to its folder");
        }
        int abi;
        try {
            abi = library.getFunction("gaugepoint_abi").invokeInt(new Object[0]);
        } catch (UnsatisfiedLinkError e) {
            throw new UnsatisfiedLinkError("the library " + library.getFile() + " is not that of gaugepoint");
        }
        if (abi != Codes.ABI) {
            throw new UnsatisfiedLinkError("the library " + library.getFile() + " has ABI " + abi + ", this binding is for ABI " + Codes.ABI);
        }
        Native.register(methods, library);
    }

    /** Version of the library, as "1.2.3". */
    public static String version() {
        return gaugepoint_version().getString(0, "UTF-8");
    }

    /** A status as a word: "out_of_range"; "unknown" when it is unknown. */
    public static String nameOf(int status) {
        return gaugepoint_status_name(status).getString(0, "UTF-8");
    }

    /** One sentence on a status. */
    public static String textOf(int status) {
        return gaugepoint_status_text(status).getString(0, "UTF-8");
    }

    /** What a value is judged to be. */
    public static final class Decided {
        /** One of Codes.Conformity. */
        public final int conformity;
        /** Probability of conformity. */
        public final double probability;

        Decided(int conformity, double probability) {
            this.conformity = conformity;
            this.probability = probability;
        }
    }

    /**
     * Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
     *
     * @param lowerMm lower limit; null is none, but one of both must be given
     * @param upperMm upper limit; null is none
     * @param rule one of Codes.Rule
     * @param atLeast the probability or the ratio that two of the rules ask for; the others do not look at it
     * @throws GaugepointException when a value is refused
     */
    public static Decided decideMm(double valueMm, double standardUncertaintyMm, Double lowerMm, Double upperMm, int rule, double atLeast) {
        Records.Error error = error();
        int[] result = {0};
        double[] probability = {Double.NaN};
        check(gaugepoint_decide_mm(valueMm, standardUncertaintyMm, lowerMm == null ? 0 : 1, lowerMm == null ? 0 : lowerMm, upperMm == null ? 0 : 1,
                upperMm == null ? 0 : upperMm, rule, atLeast, result, probability, error), error);
        return new Decided(result[0], probability[0]);
    }

    /** size_t. */
    public static final class SizeT extends IntegerType {
        private static final long serialVersionUID = 1;

        /** 0. */
        public SizeT() {
            this(0);
        }

        /** A size that is not below 0. */
        public SizeT(long value) {
            super(Native.SIZE_T_SIZE, value, true);
        }
    }

    /** Place for a size_t. */
    public static final class SizeTByReference extends ByReference {
        /** 0. */
        public SizeTByReference() {
            super(Native.SIZE_T_SIZE);
            getPointer().clear(Native.SIZE_T_SIZE);
        }

        long value() {
            return Native.SIZE_T_SIZE == 8 ? getPointer().getLong(0) : getPointer().getInt(0) & 0xffffffffL;
        }
    }

    /** A text that the library gives. */
    static final class Given {
        final PointerByReference text = new PointerByReference();
        final SizeTByReference length = new SizeTByReference();

        /** The text, which is freed. */
        String taken() {
            try {
                return new String(text.getValue().getByteArray(0, Math.toIntExact(length.value())), StandardCharsets.UTF_8);
            } finally {
                gaugepoint_text_free(text.getValue());
            }
        }
    }

    /** An error to hand in; it is read on failure only. */
    static Records.Error error() {
        Records.Error error = new Records.Error();
        error.setAutoSynch(false);
        error.writeField("structSize");
        return error;
    }

    /** Throws unless the status is 0. */
    static void check(int status, Records.Error error) {
        if (status != 0) {
            error.read();
            throw new GaugepointException(status, error);
        }
    }

    /** UTF-8 of a text; what is no text is refused. */
    static byte[] bytes(String text) {
        try {
            ByteBuffer encoded = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
            byte[] bytes = new byte[encoded.remaining()];
            encoded.get(bytes);
            return bytes;
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException("half of a surrogate pair", e);
        }
    }

    /** A text in a structure, up to its NUL. */
    static String text(byte[] room) {
        int length = 0;
        while (room[length] != 0) {
            length++;
        }
        return new String(room, 0, length, StandardCharsets.UTF_8);
    }

    /** How many rows all columns have. */
    static int rows(double[]... columns) {
        for (double[] column : columns) {
            if (column.length != columns[0].length) {
                throw new IllegalArgumentException("columns of " + columns[0].length + " and " + column.length + " rows");
            }
        }
        return columns[0].length;
    }

    /** Has each row a place for its status? */
    static void rows(int[] rowStatus, int rows) {
        if (rowStatus.length != rows) {
            throw new IllegalArgumentException(rowStatus.length + " statuses for " + rows + " rows");
        }
    }

    private static Memory copied(byte[] bytes) {
        Memory memory = new Memory(Math.max(bytes.length, 1));
        memory.write(0, bytes, 0, bytes.length);
        return memory;
    }

    private static Memory copied(double[] numbers) {
        Memory memory = new Memory(Math.max(numbers.length, 1) * 8L);
        memory.write(0, numbers, 0, numbers.length);
        return memory;
    }

    /** What the library holds for an object, until it is closed. Calls of one object wait for each other. */
    private abstract static class Handle implements AutoCloseable {
        private Pointer made;

        final void hold(Pointer made) {
            this.made = made;
        }

        /** The handle of an object that is not closed. */
        final Pointer held() {
            if (made == null) {
                throw new IllegalStateException("closed");
            }
            return made;
        }

        abstract void free(Pointer made);

        /** Frees it. Twice is once. */
        @Override
        public final synchronized void close() {
            if (made != null) {
                free(made);
            }
            made = null;
        }
    }

    /** A linear stack of contributors. Lengths are in one unit, the caller's. Any thread may use it. */
    public static final class Stack extends Handle {
        /** An empty stack. */
        public Stack() {
            Records.Error error = error();
            PointerByReference made = new PointerByReference();
            check(gaugepoint_stack_new(null, new SizeT(), made, error), error);
            hold(made.getValue());
        }

        /** Adds a contributor that adds to the stack once. */
        public void add(String name, double nominal, double lower, double upper, int kind, double[] numbers) {
            add(name, nominal, lower, upper, kind, numbers, 1, 1);
        }

        /**
         * Adds a contributor. On failure the stack is as it was.
         *
         * @param lower lowest deviation from the nominal size
         * @param upper highest deviation
         * @param kind one of Codes.Variation
         * @param numbers the numbers of the kind
         * @param coefficient 1 where it adds, -1 where it subtracts
         * @param count how many independent pieces there are
         * @throws GaugepointException when a value is refused
         */
        public synchronized void add(String name, double nominal, double lower, double upper, int kind, double[] numbers, double coefficient, int count) {
            Records.Error error = error();
            byte[] text = bytes(name);
            Records.Contributor contributor = new Records.Contributor();
            contributor.name = copied(text);
            contributor.nameLength.setValue(text.length);
            contributor.nominal = nominal;
            contributor.lower = lower;
            contributor.upper = upper;
            contributor.coefficient = coefficient;
            contributor.count.setValue(Math.max(count, 0));
            contributor.kind = kind;
            contributor.numbers = copied(numbers);
            contributor.numberCount.setValue(numbers.length);
            check(gaugepoint_stack_add(held(), contributor, error), error);
        }

        /** The size that the stack is below with a probability between 0 and 1. */
        public synchronized double quantile(double probability) {
            Records.Error error = error();
            double[] out = {Double.NaN};
            check(gaugepoint_stack_quantile(held(), probability, out, error), error);
            return out[0];
        }

        /** Probabilities below and above two limits, with a bound of their relative error. An infinite limit is no limit. */
        public synchronized Records.Tail outside(double lower, double upper) {
            Records.Error error = error();
            Records.Tail tail = new Records.Tail();
            check(gaugepoint_stack_outside(held(), lower, upper, tail, error), error);
            return tail;
        }

        @Override
        void free(Pointer made) {
            gaugepoint_stack_free(made);
        }
    }

    /** A document with its report. Any thread may use it. */
    public static final class Report extends Handle {
        /** Evaluates a document of a kind, once, without working. */
        public Report(int kind, String document) {
            this(kind, document, false);
        }

        /**
         * Evaluates a document, once. Readings that are missing give a report that says what is missing.
         *
         * @param kind one of Codes.Document
         * @throws GaugepointException when the document is refused
         */
        public Report(int kind, String document, boolean withWorking) {
            Records.Error error = error();
            byte[] text = bytes(document);
            PointerByReference made = new PointerByReference();
            check(gaugepoint_report_new(kind, text, new SizeT(text.length), withWorking ? 1 : 0, made, error), error);
            hold(made.getValue());
        }

        /** Writes the report in one of Codes.Format. */
        public synchronized String written(int format) {
            Records.Error error = error();
            Given given = new Given();
            check(gaugepoint_report_text(held(), format, given.text, given.length, error), error);
            return given.taken();
        }

        /** What a job comes to. */
        public synchronized Records.JobVerdict job() {
            Records.Error error = error();
            Records.JobVerdict verdict = new Records.JobVerdict();
            check(gaugepoint_report_job(held(), verdict, error), error);
            return verdict;
        }

        /** What a cylinder of a job comes to; by its place in the report, from 0. */
        public synchronized Records.CylinderVerdict cylinder(int cylinder) {
            Records.Error error = error();
            Records.CylinderVerdict verdict = new Records.CylinderVerdict();
            check(gaugepoint_report_cylinder(held(), place(cylinder), verdict, error), error);
            return verdict;
        }

        /** One decision on a cylinder, by the places of both, from 0. */
        public synchronized Records.JobDecision decision(int cylinder, int decision) {
            Records.Error error = error();
            Records.JobDecision found = new Records.JobDecision();
            check(gaugepoint_report_decision(held(), place(cylinder), place(decision), found, error), error);
            return found;
        }

        /** Sentences of one of Codes.Lines; `cylinder` is the place of a cylinder, from 0, and 0 with sentences on the engine. */
        public synchronized List<String> sentences(int lines, int cylinder) {
            List<String> all = new ArrayList<>();
            while (true) {
                Records.Error error = error();
                Given given = new Given();
                int status = gaugepoint_report_line(held(), lines, place(cylinder), new SizeT(all.size()), given.text, given.length, error);
                if (status == Codes.Status.OUT_OF_RANGE) {
                    error.read();
                    if (text(error.field).equals("index")) {
                        return all;
                    }
                }
                check(status, error);
                all.add(given.taken());
            }
        }

        /** A place below 0 becomes one that no report has. */
        private static SizeT place(int place) {
            return new SizeT(place < 0 ? Integer.MAX_VALUE : place);
        }

        @Override
        void free(Pointer made) {
            gaugepoint_report_free(made);
        }
    }

    /** A law of thermal expansion, checked over its whole range. Any thread may use it. */
    public static final class Expansion extends Handle {
        private Expansion(Records.Law law) {
            Records.Error error = error();
            PointerByReference made = new PointerByReference();
            check(gaugepoint_expansion_new(law, made, error), error);
            hold(made.getValue());
        }

        /** A built-in material, by its name. */
        public static Expansion builtIn(String name) {
            byte[] text = bytes(name);
            Records.Law law = new Records.Law();
            law.form = Codes.LawForm.BUILT_IN;
            law.name = copied(text);
            law.nameLength.setValue(text.length);
            return new Expansion(law);
        }

        /** One mean coefficient per kelvin from a base temperature, with the range that it holds in. */
        public static Expansion mean(double baseC, double meanPerK, double fromC, double toC) {
            Records.Law law = new Records.Law();
            law.form = Codes.LawForm.MEAN_COEFFICIENT;
            law.baseC = baseC;
            law.meanPerK = meanPerK;
            law.fromC = fromC;
            law.toC = toC;
            return new Expansion(law);
        }

        /** Mean coefficients per kelvin from a base temperature to each of rising temperatures. */
        public static Expansion meanTable(double baseC, double[] temperaturesC, double[] coefficients) {
            Records.Law law = table(Codes.LawForm.MEAN_TABLE, temperaturesC, coefficients);
            law.baseC = baseC;
            return new Expansion(law);
        }

        /** Instantaneous coefficients per kelvin at each of rising temperatures. */
        public static Expansion instantaneousTable(double[] temperaturesC, double[] coefficients) {
            return new Expansion(table(Codes.LawForm.INSTANTANEOUS_TABLE, temperaturesC, coefficients));
        }

        private static Records.Law table(int form, double[] temperaturesC, double[] coefficients) {
            Records.Law law = new Records.Law();
            law.form = form;
            law.count.setValue(rows(temperaturesC, coefficients));
            law.temperaturesC = copied(temperaturesC);
            law.coefficients = copied(coefficients);
            return law;
        }

        /** A polynomial over kelvin, from the constant up: Codes.LawForm.INSTANTANEOUS_POLYNOMIAL or STRAIN_POLYNOMIAL. */
        public static Expansion polynomial(int form, double[] coefficients, double fromC, double toC) {
            Records.Law law = new Records.Law();
            law.form = form;
            law.count.setValue(coefficients.length);
            law.coefficients = copied(coefficients);
            law.fromC = fromC;
            law.toC = toC;
            return new Expansion(law);
        }

        /** Graphite iron from its structure. */
        public static Expansion graphiteIron(double nodularityPercent, double graphitePercent, double pearliteToFerrite) {
            Records.Law law = new Records.Law();
            law.form = Codes.LawForm.GRAPHITE_IRON;
            law.nodularityPercent = nodularityPercent;
            law.graphitePercent = graphitePercent;
            law.pearliteToFerrite = pearliteToFerrite;
            return new Expansion(law);
        }

        /** Lowest and highest temperature that the law holds at. */
        public synchronized double[] rangeC() {
            Records.Error error = error();
            double[] from = {Double.NaN};
            double[] to = {Double.NaN};
            check(gaugepoint_expansion_range(held(), from, to, error), error);
            return new double[] {from[0], to[0]};
        }

        /** Strain from 20 C, instantaneous coefficient, and mean coefficient from 20 C. */
        public synchronized Records.Growth at(double temperatureC) {
            Records.Error error = error();
            Records.Growth growth = new Records.Growth();
            check(gaugepoint_expansion_at(held(), temperatureC, growth, error), error);
            return growth;
        }

        /** Mean coefficient per kelvin from one temperature to another. */
        public synchronized double meanPerK(double fromC, double toC) {
            Records.Error error = error();
            double[] out = {Double.NaN};
            check(gaugepoint_expansion_mean_per_k(held(), fromC, toC, out, error), error);
            return out[0];
        }

        /** Strains from 20 C at temperatures in any order. */
        public synchronized double[] strains(double[] temperaturesC) {
            Records.Error error = error();
            double[] strains = new double[temperaturesC.length];
            check(gaugepoint_expansion_strains(held(), temperaturesC, new SizeT(strains.length), strains, error), error);
            return strains;
        }

        @Override
        void free(Pointer made) {
            gaugepoint_expansion_free(made);
        }
    }

    private static native Pointer gaugepoint_version();

    private static native Pointer gaugepoint_status_name(int status);

    private static native Pointer gaugepoint_status_text(int status);

    private static native void gaugepoint_text_free(Pointer text);

    private static native int gaugepoint_decide_mm(double valueMm, double standardUncertaintyMm, int hasLower, double lowerMm, int hasUpper,
            double upperMm, int rule, double atLeast, int[] result, double[] probability, Records.Error error);

    private static native int gaugepoint_stack_new(Pointer contributors, SizeT count, PointerByReference stack, Records.Error error);

    private static native void gaugepoint_stack_free(Pointer stack);

    private static native int gaugepoint_stack_add(Pointer stack, Records.Contributor contributor, Records.Error error);

    private static native int gaugepoint_stack_quantile(Pointer stack, double probability, double[] out, Records.Error error);

    private static native int gaugepoint_stack_outside(Pointer stack, double lower, double upper, Records.Tail tail, Records.Error error);

    private static native int gaugepoint_report_new(int kind, byte[] document, SizeT documentLength, int withWorking, PointerByReference report,
            Records.Error error);

    private static native void gaugepoint_report_free(Pointer report);

    private static native int gaugepoint_report_text(Pointer report, int format, PointerByReference text, SizeTByReference length, Records.Error error);

    private static native int gaugepoint_report_job(Pointer report, Records.JobVerdict verdict, Records.Error error);

    private static native int gaugepoint_report_cylinder(Pointer report, SizeT cylinder, Records.CylinderVerdict verdict, Records.Error error);

    private static native int gaugepoint_report_decision(Pointer report, SizeT cylinder, SizeT decision, Records.JobDecision found,
            Records.Error error);

    private static native int gaugepoint_report_line(Pointer report, int lines, SizeT cylinder, SizeT index, PointerByReference text,
            SizeTByReference length, Records.Error error);

    private static native int gaugepoint_expansion_new(Records.Law law, PointerByReference expansion, Records.Error error);

    private static native void gaugepoint_expansion_free(Pointer expansion);

    private static native int gaugepoint_expansion_range(Pointer expansion, double[] fromC, double[] toC, Records.Error error);

    private static native int gaugepoint_expansion_at(Pointer expansion, double temperatureC, Records.Growth growth, Records.Error error);

    private static native int gaugepoint_expansion_mean_per_k(Pointer expansion, double fromC, double toC, double[] out, Records.Error error);

    private static native int gaugepoint_expansion_strains(Pointer expansion, double[] temperaturesC, SizeT count, double[] strains,
            Records.Error error);
}
