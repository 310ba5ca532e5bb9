package gaugepoint;

/** What was refused, and why. */
public final class GaugepointException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** Why, as a number: one of Codes.Status, or of a later library. */
    public final int status;
    /** The status as a word, as it also stands in reports: "out_of_range". */
    public final String name;
    /** Name of the parameter, or JSON Pointer of the field in a document. */
    public final String field;
    /** What was refused, as it was given. */
    public final String refused;
    /** Why, in words. */
    public final String reason;
    /** What was probably meant; empty when no slip explains it. */
    public final String didYouMean;
    /** Unit of the three numbers. */
    public final String unit;
    /** The refused value; null when it is not given. */
    public final Double value;
    /** Smallest accepted value; null when it is not given. */
    public final Double lower;
    /** Largest accepted value; null when it is not given. */
    public final Double upper;

    GaugepointException(int status, Records.Error error) {
        super(Gaugepoint.text(error.message));
        this.status = status;
        name = Gaugepoint.nameOf(status);
        field = Gaugepoint.text(error.field);
        refused = Gaugepoint.text(error.refused);
        reason = Gaugepoint.text(error.reason);
        didYouMean = Gaugepoint.text(error.didYouMean);
        unit = Gaugepoint.text(error.unit);
        value = error.hasValue != 0 ? (Double) error.value : null;
        lower = error.hasLower != 0 ? (Double) error.lower : null;
        upper = error.hasUpper != 0 ? (Double) error.upper : null;
    }
}
