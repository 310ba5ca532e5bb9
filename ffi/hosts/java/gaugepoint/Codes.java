package gaugepoint;

/** Statuses and enumerations of gaugepoint.h. Generated from it; the test that compares it also writes it. */
public final class Codes {
    private Codes() {
    }

    /** Number of the ABI that this binding is for. */
    public static final int ABI = 1;

    /** Statuses. See STATUS at the head. */
    public static final class Status {
        private Status() {
        }

        /** Success. */
        public static final int OK = 0;
        /** The text is not valid UTF-8. */
        public static final int NOT_UTF8 = 101;
        /** The text is larger than is accepted. */
        public static final int TOO_LARGE = 102;
        /** The text is not valid JSON. */
        public static final int SYNTAX = 103;
        /** The text is nested more deeply than is accepted. */
        public static final int TOO_DEEP = 104;
        /** A field holds another type of JSON value than it should. */
        public static final int WRONG_TYPE = 105;
        /** A field is not known here. */
        public static final int UNKNOWN_FIELD = 106;
        /** A field stands twice in the same object. */
        public static final int REPEATED_FIELD = 107;
        /** A required field is missing. */
        public static final int MISSING_FIELD = 108;
        /** A word is not one of the words accepted here. */
        public static final int UNKNOWN_CHOICE = 109;
        /** The document's format or version is not one this library reads. */
        public static final int UNKNOWN_FORMAT = 110;
        /** The text does not hold a decimal number. */
        public static final int NOT_A_NUMBER = 201;
        /** A number stands without a unit. */
        public static final int MISSING_UNIT = 202;
        /** The unit is unknown or measures something else. */
        public static final int WRONG_UNIT = 203;
        /** A fraction of an inch is not a measurement. */
        public static final int FRACTION = 204;
        /** A comma stands where a decimal point should. */
        public static final int DECIMAL_COMMA = 205;
        /** The number has more digits than are accepted. */
        public static final int TOO_MANY_DIGITS = 206;
        /** The number is not finite. */
        public static final int NOT_FINITE = 207;
        /** The text is not an ISO 8601 date. */
        public static final int NOT_A_DATE = 208;
        /** A name or note holds a control character. */
        public static final int CONTROL_CHARACTER = 209;
        /** The text is not a formula in ordinary algebra, or a name cannot stand in one. */
        public static final int NOT_AN_EXPRESSION = 210;
        /** The value is outside what is possible for this quantity. */
        public static final int OUT_OF_RANGE = 301;
        /** A lower bound is above its upper bound, or rows are out of order. */
        public static final int OUT_OF_ORDER = 302;
        /** A name or number that must be unique stands twice. */
        public static final int REPEATED = 303;
        /** A name refers to nothing in the document. */
        public static final int UNKNOWN_NAME = 304;
        /** Two fields contradict each other. */
        public static final int CONTRADICTION = 305;
        /** A temperature is outside the range of the expansion law. */
        public static final int OUTSIDE_LAW = 306;
        /** The caller stopped the work. */
        public static final int STOPPED = 401;
        /** A pointer that is needed is NULL. */
        public static final int NULL_POINTER = 901;
        /** The struct_size of a structure was not set. */
        public static final int STRUCT_SIZE = 902;
        /** There is no memory for the text. */
        public static final int OUT_OF_MEMORY = 903;
        /** A fault of this library; please report it. */
        public static final int PANIC = 904;
        /** A callback said that it failed. */
        public static final int CALLBACK_FAILED = 905;
    }

    /** Rule of decision. */
    public static final class Rule {
        private Rule() {
        }

        /** The value lies within the limits. The uncertainty is stated, not used. */
        public static final int SIMPLE_ACCEPTANCE = 1;
        /** The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1. */
        public static final int PROVEN = 2;
        /** The probability of conformity reaches what is asked. JCGM 106. */
        public static final int CONFORMANCE_PROBABILITY = 3;
        /**
         * The value lies within the limits by its expanded uncertainty, twice the standard uncertainty. ISO
         * 14253-1:1998.
         */
        public static final int EXPANDED_GUARD_BAND = 4;
        /**
         * The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME
         * B89.7.3.1.
         */
        public static final int SIMPLE_ACCEPTANCE_BY_RATIO = 5;
    }

    /** What a document is. */
    public static final class Document {
        private Document() {
        }

        /** A job. */
        public static final int JOB = 1;
        /** A printed sheet. */
        public static final int SHEET = 2;
        /** A measurement. */
        public static final int MEASUREMENT = 3;
        /** A hot fit. */
        public static final int FIT = 4;
        /** A stack. */
        public static final int STACK = 5;
        /** A budget of uncertainty. */
        public static final int BUDGET = 6;
        /** Two jobs of one engine. */
        public static final int REVISIT = 7;
        /** A job with other values. */
        public static final int WHAT_IF = 8;
    }

    /** How a report is written. */
    public static final class Format {
        private Format() {
        }

        /** JSON on one line. */
        public static final int JSON = 1;
        /** Text for a reader, of at most 100 columns where a word or a table does not need more. */
        public static final int TEXT = 2;
        /** Markdown. */
        public static final int MARKDOWN = 3;
    }

    /** What a verdict says, from the best to the worst. */
    public static final class Outcome {
        private Outcome() {
        }

        /** It goes back. */
        public static final int REUSE = 1;
        /** Something that is needed was not read. */
        public static final int INCOMPLETE = 2;
        /** Neither conformity nor the opposite is proven, or there is nothing to judge by. */
        public static final int NOT_PROVEN = 3;
        /** A damage whose cause is not known. */
        public static final int FIND_THE_CAUSE_FIRST = 4;
        /** It does not go back. */
        public static final int DO_NOT_REUSE = 5;
    }

    /** What a decision is of. */
    public static final class Judged {
        private Judged() {
        }

        /** Piston at its gauge point. */
        public static final int PISTON_SIZE = 1;
        /** Bore by the size rule. */
        public static final int BORE_SIZE = 2;
        /** Taper of the bore. */
        public static final int BORE_TAPER = 3;
        /** Out-of-round of the bore. */
        public static final int BORE_OUT_OF_ROUND = 4;
        /** Clearance on the bench. */
        public static final int BENCH_CLEARANCE = 5;
        /** Clearance on the bench at the smallest place that was read. */
        public static final int SMALLEST_CLEARANCE = 6;
        /** Margin against the reference case, hottest piston and coldest bore. */
        public static final int RUNNING_MARGIN_TIGHT = 7;
        /** Margin against the reference case, coldest piston and hottest bore. */
        public static final int RUNNING_MARGIN_LOOSE = 8;
        /** Clearance of a piston to hand in a bore. */
        public static final int MATCHED_CLEARANCE = 9;
        /** Clearance after the work. */
        public static final int FINISHED_CLEARANCE = 10;
        /** Bore after the work, against the size it was machined to. */
        public static final int FINISHED_SIZE = 11;
        /** End gap of a ring after filing. */
        public static final int RING_GAP = 12;
        /** A value that belongs to no job. */
        public static final int VALUE = 13;
    }

    /** Sentences of the report on a job. */
    public static final class Lines {
        private Lines() {
        }

        /** What to take care of. Show them with the results. */
        public static final int CAUTIONS = 1;
        /** What is odd, each with its field. */
        public static final int WARNINGS = 2;
        /** Why the verdict on the engine is what it is, the weightiest first. */
        public static final int REASONS = 3;
        /** Why the verdict on a cylinder is what it is, the weightiest first. */
        public static final int CYLINDER_REASONS = 4;
        /** What of a cylinder was not read. */
        public static final int CYLINDER_MISSING = 5;
        /** Why each decision on a cylinder is what it is, in the order of the decisions. */
        public static final int CYLINDER_DECISIONS = 6;
    }

    /** What a decision says. */
    public static final class Conformity {
        private Conformity() {
        }

        /** It conforms. */
        public static final int CONFORMS = 1;
        /** It does not conform. */
        public static final int DOES_NOT_CONFORM = 2;
        /** Neither is proven. */
        public static final int NOT_PROVEN = 3;
        /** There is nothing to judge by, or the call failed. */
        public static final int NOT_JUDGED = 4;
    }

    /** How a contributor varies, with its numbers in order: deviations from the nominal. */
    public static final class Variation {
        private Variation() {
        }

        /** Centre, standard deviation. A shared cause has no centre. */
        public static final int NORMAL = 1;
        /** Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit. */
        public static final int CAPABILITY_TOWARD_LOWER = 2;
        /** Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit. */
        public static final int CAPABILITY_TOWARD_UPPER = 3;
        /** Mean and standard deviation before sorting, lower and upper limit of the sorting. */
        public static final int TRUNCATED_NORMAL = 4;
        /** Centre, half-width. A shared cause has no centre. */
        public static final int RECTANGULAR = 5;
        /** Lower end, mode, upper end. Of a shared cause the half-width. */
        public static final int TRIANGULAR = 6;
        /**
         * Centre, half-width of the base, width of the top over that of the base. A shared cause has no
         * centre.
         */
        public static final int TRAPEZOIDAL = 7;
        /** Centre, half-width. A shared cause has no centre. */
        public static final int ARCSINE = 8;
        /** Two shapes, lower end, upper end. */
        public static final int BETA = 9;
        /** Probability and value in turn, of two measured quantiles or more. */
        public static final int SKEWED = 10;
        /** The measured values. */
        public static final int SAMPLE = 11;
    }

    /** Form of a law of expansion. */
    public static final class LawForm {
        private LawForm() {
        }

        /** One mean coefficient from a base: base_c, mean_per_k, from_c, to_c. */
        public static final int MEAN_COEFFICIENT = 1;
        /** Mean coefficients from a base to each temperature: base_c, temperatures_c, coefficients. */
        public static final int MEAN_TABLE = 2;
        /** Instantaneous coefficients at each temperature: temperatures_c, coefficients. */
        public static final int INSTANTANEOUS_TABLE = 3;
        /** An instantaneous coefficient that is a polynomial in kelvin: coefficients, from_c, to_c. */
        public static final int INSTANTANEOUS_POLYNOMIAL = 4;
        /** A strain that is a polynomial in kelvin: coefficients, from_c, to_c. */
        public static final int STRAIN_POLYNOMIAL = 5;
        /** Graphite iron from its structure: the three numbers of growth_graphite_iron. */
        public static final int GRAPHITE_IRON = 6;
        /** A built-in material: name, name_length. */
        public static final int BUILT_IN = 7;
    }
}
