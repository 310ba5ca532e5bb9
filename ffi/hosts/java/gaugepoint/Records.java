package gaugepoint;

import com.sun.jna.Pointer;
import com.sun.jna.Structure;

/** Structures of gaugepoint.h. Generated from it; the test that compares it also writes it. */
public final class Records {
    private Records() {
    }

    /**
     * What was refused, and why. Belongs to the caller; see ERROR at the head.
     *
     * Every text ends with a NUL.
     */
    @Structure.FieldOrder({"structSize", "status", "hasValue", "hasLower", "hasUpper", "value", "lower", "upper", "unit", "field", "refused", "reason", "didYouMean", "message"})
    public static final class Error extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** The status that was returned. */
        public int status;
        /** 1 when value is given, else 0. */
        public int hasValue;
        /** 1 when lower is given, else 0. */
        public int hasLower;
        /** 1 when upper is given, else 0. */
        public int hasUpper;
        /** The refused value, in unit; NaN when not given. */
        public double value;
        /** Smallest accepted value, in unit; NaN when not given. */
        public double lower;
        /** Largest accepted value, in unit; NaN when not given. */
        public double upper;
        /** Unit of the three numbers: "mm", "C", "K", "1/K", "deg", "1" (a pure number) or empty. */
        public byte[] unit = new byte[16];
        /**
         * Name of the parameter, or JSON Pointer (RFC 6901) of the refused field in the job; empty when it is
         * the whole text.
         */
        public byte[] field = new byte[256];
        /** What was refused, as it was given. */
        public byte[] refused = new byte[336];
        /** Why. */
        public byte[] reason = new byte[512];
        /** What was probably meant; empty when no slip of unit or of spelling explains it. */
        public byte[] didYouMean = new byte[128];
        /** All of this in one line. */
        public byte[] message = new byte[1024];

        /** Zeroed, with its size. */
        public Error() {
            structSize.setValue(size());
        }
    }

    /** What a job comes to; see RECORDS at the head. */
    @Structure.FieldOrder({"structSize", "outcome", "reserved", "cylinderCount", "reuseCount", "incompleteCount", "notProvenCount", "findTheCauseFirstCount", "doNotReuseCount"})
    public static final class JobVerdict extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** A GaugepointOutcome: that of the engine, the worst of its cylinders. */
        public int outcome;
        /** 0. */
        public int reserved;
        /** Cylinders of the engine. */
        public Gaugepoint.SizeT cylinderCount = new Gaugepoint.SizeT();
        /** Cylinders that go back. */
        public Gaugepoint.SizeT reuseCount = new Gaugepoint.SizeT();
        /** Cylinders of which something was not read. */
        public Gaugepoint.SizeT incompleteCount = new Gaugepoint.SizeT();
        /** Cylinders of which nothing is proven. */
        public Gaugepoint.SizeT notProvenCount = new Gaugepoint.SizeT();
        /** Cylinders with a damage whose cause is not known. */
        public Gaugepoint.SizeT findTheCauseFirstCount = new Gaugepoint.SizeT();
        /** Cylinders that do not go back. */
        public Gaugepoint.SizeT doNotReuseCount = new Gaugepoint.SizeT();

        /** Zeroed, with its size. */
        public JobVerdict() {
            structSize.setValue(size());
        }
    }

    /** What a cylinder of a job comes to; see RECORDS at the head. */
    @Structure.FieldOrder({"structSize", "number", "outcome", "hasPiston", "pistonOutcome", "hasBore", "boreOutcome", "hasDecidedBy", "decidedBy", "decisionCount", "missingCount"})
    public static final class CylinderVerdict extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** Number of the cylinder. */
        public int number;
        /** A GaugepointOutcome: that of the cylinder. */
        public int outcome;
        /** 1 when there is a verdict on its piston, else 0. */
        public int hasPiston;
        /** A GaugepointOutcome: that of its piston; 0 when not given. */
        public int pistonOutcome;
        /** 1 when there is a verdict on its bore, else 0. */
        public int hasBore;
        /** A GaugepointOutcome: that of its bore; 0 when not given. */
        public int boreOutcome;
        /** 1 when a measured value decided, else 0. */
        public int hasDecidedBy;
        /** A GaugepointJudged: the value that decided; 0 when not given. */
        public int decidedBy;
        /** Decisions on it. */
        public Gaugepoint.SizeT decisionCount = new Gaugepoint.SizeT();
        /** What was not read of it. */
        public Gaugepoint.SizeT missingCount = new Gaugepoint.SizeT();

        /** Zeroed, with its size. */
        public CylinderVerdict() {
            structSize.setValue(size());
        }
    }

    /** One value of a job against its limits; see RECORDS at the head. */
    @Structure.FieldOrder({"structSize", "judged", "result", "hasValue", "hasReferenceTemperature", "hasLower", "hasUpper", "hasGuardBand", "hasRejectionGuardBand", "hasUncertaintyRatio", "hasProbability", "valueMm", "standardUncertaintyMm", "dof", "referenceTemperatureC", "lowerMm", "upperMm", "guardBandMm", "rejectionGuardBandMm", "uncertaintyRatio", "probabilityOfConformity"})
    public static final class JobDecision extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** A GaugepointJudged: what it is of. */
        public int judged;
        /** A GaugepointConformity. */
        public int result;
        /** 1 when value_mm, its uncertainty and degrees of freedom are given, else 0. */
        public int hasValue;
        /** 1 when reference_temperature_c is given, else 0. */
        public int hasReferenceTemperature;
        /** 1 when lower_mm is given, else 0. */
        public int hasLower;
        /** 1 when upper_mm is given, else 0. */
        public int hasUpper;
        /** 1 when guard_band_mm is given, else 0. */
        public int hasGuardBand;
        /** 1 when rejection_guard_band_mm is given, else 0. */
        public int hasRejectionGuardBand;
        /** 1 when uncertainty_ratio is given, else 0. */
        public int hasUncertaintyRatio;
        /** 1 when probability_of_conformity is given, else 0. */
        public int hasProbability;
        /** The value at the reference temperature of its limit. */
        public double valueMm;
        /** Its standard uncertainty. */
        public double standardUncertaintyMm;
        /** Its effective degrees of freedom; INFINITY when they are infinite. */
        public double dof;
        /** Reference temperature of the limit. */
        public double referenceTemperatureC;
        /** Lower limit. */
        public double lowerMm;
        /** Upper limit. */
        public double upperMm;
        /** What a value must lie inside the limits to conform; below 0 it may lie outside. */
        public double guardBandMm;
        /** What a value must lie outside the limits to not conform; below 0 it may lie inside. */
        public double rejectionGuardBandMm;
        /** Tolerance over the uncertainty interval 2 U. */
        public double uncertaintyRatio;
        /** Probability that the true value conforms. */
        public double probabilityOfConformity;

        /** Zeroed, with its size. */
        public JobDecision() {
            structSize.setValue(size());
        }
    }

    /** A contributor of a stack. A plain structure. */
    @Structure.FieldOrder({"name", "nameLength", "nominal", "lower", "upper", "coefficient", "count", "kind", "reserved", "numbers", "numberCount"})
    public static final class Contributor extends Structure {
        /** Its name, which no other contributor and no shared cause has. */
        public Pointer name;
        /** Length of the name in bytes. */
        public Gaugepoint.SizeT nameLength = new Gaugepoint.SizeT();
        /** Nominal size. */
        public double nominal;
        /** Lowest deviation that its limits allow. */
        public double lower;
        /** Highest deviation that its limits allow. */
        public double upper;
        /** Change of the stack for a change of this: 1 where it adds, -1 where it subtracts. */
        public double coefficient;
        /** How many independent pieces there are: 1 to 1000. */
        public Gaugepoint.SizeT count = new Gaugepoint.SizeT();
        /** A GaugepointVariation. */
        public int kind;
        /** Not used; 0. */
        public int reserved;
        /** The numbers of the kind. */
        public Pointer numbers;
        /** How many numbers there are. */
        public Gaugepoint.SizeT numberCount = new Gaugepoint.SizeT();

        /** Zeroed. */
        public Contributor() {
        }
    }

    /** Probabilities outside limits; see RECORDS at the head. */
    @Structure.FieldOrder({"structSize", "below", "above", "error", "ppm"})
    public static final class Tail extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** Probability below the lower limit. */
        public double below;
        /** Probability above the upper limit. */
        public double above;
        /** Bound of the relative error of both. */
        public double error;
        /** Parts per million outside. */
        public double ppm;

        /** Zeroed, with its size. */
        public Tail() {
            structSize.setValue(size());
        }
    }

    /**
     * A law of expansion, as the functions growth_... have it; its form says which fields count. A plain
     * structure; start it zeroed.
     */
    @Structure.FieldOrder({"form", "reserved", "baseC", "meanPerK", "fromC", "toC", "temperaturesC", "coefficients", "count", "nodularityPercent", "graphitePercent", "pearliteToFerrite", "name", "nameLength"})
    public static final class Law extends Structure {
        /** A GaugepointLawForm. */
        public int form;
        /** Not used; 0. */
        public int reserved;
        /** Temperature the means start from. */
        public double baseC;
        /** The mean coefficient. */
        public double meanPerK;
        /** Lowest temperature it holds at. */
        public double fromC;
        /** Highest temperature it holds at. */
        public double toC;
        /** Rising temperatures of a table, count of them. */
        public Pointer temperaturesC;
        /**
         * Coefficients of a table per kelvin, or of a polynomial over kelvin from the constant up; count of
         * them.
         */
        public Pointer coefficients;
        /** How many there are. */
        public Gaugepoint.SizeT count = new Gaugepoint.SizeT();
        /** Nodularity of graphite iron, in %. */
        public double nodularityPercent;
        /** Area fraction of graphite, in %. */
        public double graphitePercent;
        /** Pearlite over ferrite. */
        public double pearliteToFerrite;
        /** Name of a built-in material. */
        public Pointer name;
        /** Its length in bytes. */
        public Gaugepoint.SizeT nameLength = new Gaugepoint.SizeT();

        /** Zeroed. */
        public Law() {
        }
    }

    /** What a law of expansion says of one temperature; see RECORDS at the head. */
    @Structure.FieldOrder({"structSize", "hasMean", "reserved", "strain", "instantaneousPerK", "meanFrom20PerK"})
    public static final class Growth extends Structure {
        /** Size of this structure in bytes, set by the caller. */
        public Gaugepoint.SizeT structSize = new Gaugepoint.SizeT();
        /** 1 when mean_from_20_per_k is given, else 0: at 20 C there is no mean from 20 C. */
        public int hasMean;
        /** 0. */
        public int reserved;
        /** Strain from 20 C: (L - L20) / L20. */
        public double strain;
        /** Instantaneous coefficient, (1 / L20) dL/dT. */
        public double instantaneousPerK;
        /** Mean coefficient from 20 C. */
        public double meanFrom20PerK;

        /** Zeroed, with its size. */
        public Growth() {
            structSize.setValue(size());
        }
    }
}
