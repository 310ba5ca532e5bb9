// Statuses, enumerations, records, flat functions and documents
// of gaugepoint.h. Generated from it; the test that compares it also writes it.
using System;
using System.Runtime.InteropServices;

// the library writes the fields
#pragma warning disable 0169, 0649

namespace Gaugepoint
{
    /// <summary>Statuses. See STATUS at the head.</summary>
    public enum Status
    {
        /// <summary>Success.</summary>
        Ok = 0,
        /// <summary>The text is not valid UTF-8.</summary>
        NotUtf8 = 101,
        /// <summary>The text is larger than is accepted.</summary>
        TooLarge = 102,
        /// <summary>The text is not valid JSON.</summary>
        Syntax = 103,
        /// <summary>The text is nested more deeply than is accepted.</summary>
        TooDeep = 104,
        /// <summary>A field holds another type of JSON value than it should.</summary>
        WrongType = 105,
        /// <summary>A field is not known here.</summary>
        UnknownField = 106,
        /// <summary>A field stands twice in the same object.</summary>
        RepeatedField = 107,
        /// <summary>A required field is missing.</summary>
        MissingField = 108,
        /// <summary>A word is not one of the words accepted here.</summary>
        UnknownChoice = 109,
        /// <summary>The document's format or version is not one this library reads.</summary>
        UnknownFormat = 110,
        /// <summary>The text does not hold a decimal number.</summary>
        NotANumber = 201,
        /// <summary>A number stands without a unit.</summary>
        MissingUnit = 202,
        /// <summary>The unit is unknown or measures something else.</summary>
        WrongUnit = 203,
        /// <summary>A fraction of an inch is not a measurement.</summary>
        Fraction = 204,
        /// <summary>A comma stands where a decimal point should.</summary>
        DecimalComma = 205,
        /// <summary>The number has more digits than are accepted.</summary>
        TooManyDigits = 206,
        /// <summary>The number is not finite.</summary>
        NotFinite = 207,
        /// <summary>The text is not an ISO 8601 date.</summary>
        NotADate = 208,
        /// <summary>A name or note holds a control character.</summary>
        ControlCharacter = 209,
        /// <summary>The text is not a formula in ordinary algebra, or a name cannot stand in one.</summary>
        NotAnExpression = 210,
        /// <summary>The value is outside what is possible for this quantity.</summary>
        OutOfRange = 301,
        /// <summary>A lower bound is above its upper bound, or rows are out of order.</summary>
        OutOfOrder = 302,
        /// <summary>A name or number that must be unique stands twice.</summary>
        Repeated = 303,
        /// <summary>A name refers to nothing in the document.</summary>
        UnknownName = 304,
        /// <summary>Two fields contradict each other.</summary>
        Contradiction = 305,
        /// <summary>A temperature is outside the range of the expansion law.</summary>
        OutsideLaw = 306,
        /// <summary>The caller stopped the work.</summary>
        Stopped = 401,
        /// <summary>A pointer that is needed is NULL.</summary>
        NullPointer = 901,
        /// <summary>The struct_size of a structure was not set.</summary>
        StructSize = 902,
        /// <summary>There is no memory for the text.</summary>
        OutOfMemory = 903,
        /// <summary>A fault of this library; please report it.</summary>
        Panic = 904,
        /// <summary>A callback said that it failed.</summary>
        CallbackFailed = 905,
    }

    /// <summary>Rule of decision.</summary>
    public enum Rule
    {
        /// <summary>The value lies within the limits. The uncertainty is stated, not used.</summary>
        SimpleAcceptance = 1,
        /// <summary>The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.</summary>
        Proven = 2,
        /// <summary>The probability of conformity reaches what is asked. JCGM 106.</summary>
        ConformanceProbability = 3,
        /// <summary>
        /// The value lies within the limits by its expanded uncertainty, twice the standard uncertainty. ISO
        /// 14253-1:1998.
        /// </summary>
        ExpandedGuardBand = 4,
        /// <summary>
        /// The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME
        /// B89.7.3.1.
        /// </summary>
        SimpleAcceptanceByRatio = 5,
    }

    /// <summary>What a document is.</summary>
    public enum Document
    {
        /// <summary>A job.</summary>
        Job = 1,
        /// <summary>A printed sheet.</summary>
        Sheet = 2,
        /// <summary>A measurement.</summary>
        Measurement = 3,
        /// <summary>A hot fit.</summary>
        Fit = 4,
        /// <summary>A stack.</summary>
        Stack = 5,
        /// <summary>A budget of uncertainty.</summary>
        Budget = 6,
        /// <summary>Two jobs of one engine.</summary>
        Revisit = 7,
        /// <summary>A job with other values.</summary>
        WhatIf = 8,
    }

    /// <summary>How a report is written.</summary>
    public enum Format
    {
        /// <summary>JSON on one line.</summary>
        Json = 1,
        /// <summary>Text for a reader, of at most 100 columns where a word or a table does not need more.</summary>
        Text = 2,
        /// <summary>Markdown.</summary>
        Markdown = 3,
    }

    /// <summary>What a verdict says, from the best to the worst.</summary>
    public enum Outcome
    {
        /// <summary>It goes back.</summary>
        Reuse = 1,
        /// <summary>Something that is needed was not read.</summary>
        Incomplete = 2,
        /// <summary>Neither conformity nor the opposite is proven, or there is nothing to judge by.</summary>
        NotProven = 3,
        /// <summary>A damage whose cause is not known.</summary>
        FindTheCauseFirst = 4,
        /// <summary>It does not go back.</summary>
        DoNotReuse = 5,
    }

    /// <summary>What a decision is of.</summary>
    public enum Judged
    {
        /// <summary>Piston at its gauge point.</summary>
        PistonSize = 1,
        /// <summary>Bore by the size rule.</summary>
        BoreSize = 2,
        /// <summary>Taper of the bore.</summary>
        BoreTaper = 3,
        /// <summary>Out-of-round of the bore.</summary>
        BoreOutOfRound = 4,
        /// <summary>Clearance on the bench.</summary>
        BenchClearance = 5,
        /// <summary>Clearance on the bench at the smallest place that was read.</summary>
        SmallestClearance = 6,
        /// <summary>Margin against the reference case, hottest piston and coldest bore.</summary>
        RunningMarginTight = 7,
        /// <summary>Margin against the reference case, coldest piston and hottest bore.</summary>
        RunningMarginLoose = 8,
        /// <summary>Clearance of a piston to hand in a bore.</summary>
        MatchedClearance = 9,
        /// <summary>Clearance after the work.</summary>
        FinishedClearance = 10,
        /// <summary>Bore after the work, against the size it was machined to.</summary>
        FinishedSize = 11,
        /// <summary>End gap of a ring after filing.</summary>
        RingGap = 12,
        /// <summary>A value that belongs to no job.</summary>
        Value = 13,
    }

    /// <summary>Sentences of the report on a job.</summary>
    public enum Lines
    {
        /// <summary>What to take care of. Show them with the results.</summary>
        Cautions = 1,
        /// <summary>What is odd, each with its field.</summary>
        Warnings = 2,
        /// <summary>Why the verdict on the engine is what it is, the weightiest first.</summary>
        Reasons = 3,
        /// <summary>Why the verdict on a cylinder is what it is, the weightiest first.</summary>
        CylinderReasons = 4,
        /// <summary>What of a cylinder was not read.</summary>
        CylinderMissing = 5,
        /// <summary>Why each decision on a cylinder is what it is, in the order of the decisions.</summary>
        CylinderDecisions = 6,
    }

    /// <summary>What a decision says.</summary>
    public enum Conformity
    {
        /// <summary>It conforms.</summary>
        Conforms = 1,
        /// <summary>It does not conform.</summary>
        DoesNotConform = 2,
        /// <summary>Neither is proven.</summary>
        NotProven = 3,
        /// <summary>There is nothing to judge by, or the call failed.</summary>
        NotJudged = 4,
    }

    /// <summary>How a contributor varies, with its numbers in order: deviations from the nominal.</summary>
    public enum Variation
    {
        /// <summary>Centre, standard deviation. A shared cause has no centre.</summary>
        Normal = 1,
        /// <summary>Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit.</summary>
        CapabilityTowardLower = 2,
        /// <summary>Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit.</summary>
        CapabilityTowardUpper = 3,
        /// <summary>Mean and standard deviation before sorting, lower and upper limit of the sorting.</summary>
        TruncatedNormal = 4,
        /// <summary>Centre, half-width. A shared cause has no centre.</summary>
        Rectangular = 5,
        /// <summary>Lower end, mode, upper end. Of a shared cause the half-width.</summary>
        Triangular = 6,
        /// <summary>
        /// Centre, half-width of the base, width of the top over that of the base. A shared cause has no
        /// centre.
        /// </summary>
        Trapezoidal = 7,
        /// <summary>Centre, half-width. A shared cause has no centre.</summary>
        Arcsine = 8,
        /// <summary>Two shapes, lower end, upper end.</summary>
        Beta = 9,
        /// <summary>Probability and value in turn, of two measured quantiles or more.</summary>
        Skewed = 10,
        /// <summary>The measured values.</summary>
        Sample = 11,
    }

    /// <summary>Form of a law of expansion.</summary>
    public enum LawForm
    {
        /// <summary>One mean coefficient from a base: base_c, mean_per_k, from_c, to_c.</summary>
        MeanCoefficient = 1,
        /// <summary>Mean coefficients from a base to each temperature: base_c, temperatures_c, coefficients.</summary>
        MeanTable = 2,
        /// <summary>Instantaneous coefficients at each temperature: temperatures_c, coefficients.</summary>
        InstantaneousTable = 3,
        /// <summary>An instantaneous coefficient that is a polynomial in kelvin: coefficients, from_c, to_c.</summary>
        InstantaneousPolynomial = 4,
        /// <summary>A strain that is a polynomial in kelvin: coefficients, from_c, to_c.</summary>
        StrainPolynomial = 5,
        /// <summary>Graphite iron from its structure: the three numbers of growth_graphite_iron.</summary>
        GraphiteIron = 6,
        /// <summary>A built-in material: name, name_length.</summary>
        BuiltIn = 7,
    }

    /// <summary>
    /// What was refused, and why. Belongs to the caller; see ERROR at the head.
    ///
    /// Every text ends with a NUL.
    /// </summary>
    [StructLayout(LayoutKind.Sequential)]
    internal partial struct Error
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>The status that was returned.</summary>
        public int Status;
        /// <summary>1 when value is given, else 0.</summary>
        public int HasValue;
        /// <summary>1 when lower is given, else 0.</summary>
        public int HasLower;
        /// <summary>1 when upper is given, else 0.</summary>
        public int HasUpper;
        /// <summary>The refused value, in unit; NaN when not given.</summary>
        public double Value;
        /// <summary>Smallest accepted value, in unit; NaN when not given.</summary>
        public double Lower;
        /// <summary>Largest accepted value, in unit; NaN when not given.</summary>
        public double Upper;
        /// <summary>Unit of the three numbers: "mm", "C", "K", "1/K", "deg", "1" (a pure number) or empty.</summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 16)]
        public byte[] Unit;
        /// <summary>
        /// Name of the parameter, or JSON Pointer (RFC 6901) of the refused field in the job; empty when it is
        /// the whole text.
        /// </summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 256)]
        public byte[] Field;
        /// <summary>What was refused, as it was given.</summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 336)]
        public byte[] Refused;
        /// <summary>Why.</summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 512)]
        public byte[] Reason;
        /// <summary>What was probably meant; empty when no slip of unit or of spelling explains it.</summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 128)]
        public byte[] DidYouMean;
        /// <summary>All of this in one line.</summary>
        [MarshalAs(UnmanagedType.ByValArray, SizeConst = 1024)]
        public byte[] Message;
    }

    /// <summary>What a job comes to; see RECORDS at the head.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct JobVerdict
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>A GaugepointOutcome: that of the engine, the worst of its cylinders.</summary>
        public Outcome Outcome;
        /// <summary>0.</summary>
        public int Reserved;
        private UIntPtr cylinderCount;
        /// <summary>Cylinders of the engine.</summary>
        public long CylinderCount => (long)(ulong)cylinderCount;
        private UIntPtr reuseCount;
        /// <summary>Cylinders that go back.</summary>
        public long ReuseCount => (long)(ulong)reuseCount;
        private UIntPtr incompleteCount;
        /// <summary>Cylinders of which something was not read.</summary>
        public long IncompleteCount => (long)(ulong)incompleteCount;
        private UIntPtr notProvenCount;
        /// <summary>Cylinders of which nothing is proven.</summary>
        public long NotProvenCount => (long)(ulong)notProvenCount;
        private UIntPtr findTheCauseFirstCount;
        /// <summary>Cylinders with a damage whose cause is not known.</summary>
        public long FindTheCauseFirstCount => (long)(ulong)findTheCauseFirstCount;
        private UIntPtr doNotReuseCount;
        /// <summary>Cylinders that do not go back.</summary>
        public long DoNotReuseCount => (long)(ulong)doNotReuseCount;
    }

    /// <summary>What a cylinder of a job comes to; see RECORDS at the head.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct CylinderVerdict
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>Number of the cylinder.</summary>
        public int Number;
        /// <summary>A GaugepointOutcome: that of the cylinder.</summary>
        public Outcome Outcome;
        /// <summary>1 when there is a verdict on its piston, else 0.</summary>
        public int HasPiston;
        /// <summary>A GaugepointOutcome: that of its piston; 0 when not given.</summary>
        public Outcome PistonOutcome;
        /// <summary>1 when there is a verdict on its bore, else 0.</summary>
        public int HasBore;
        /// <summary>A GaugepointOutcome: that of its bore; 0 when not given.</summary>
        public Outcome BoreOutcome;
        /// <summary>1 when a measured value decided, else 0.</summary>
        public int HasDecidedBy;
        /// <summary>A GaugepointJudged: the value that decided; 0 when not given.</summary>
        public Judged DecidedBy;
        private UIntPtr decisionCount;
        /// <summary>Decisions on it.</summary>
        public long DecisionCount => (long)(ulong)decisionCount;
        private UIntPtr missingCount;
        /// <summary>What was not read of it.</summary>
        public long MissingCount => (long)(ulong)missingCount;
    }

    /// <summary>One value of a job against its limits; see RECORDS at the head.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct JobDecision
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>A GaugepointJudged: what it is of.</summary>
        public Judged Judged;
        /// <summary>A GaugepointConformity.</summary>
        public Conformity Result;
        /// <summary>1 when value_mm, its uncertainty and degrees of freedom are given, else 0.</summary>
        public int HasValue;
        /// <summary>1 when reference_temperature_c is given, else 0.</summary>
        public int HasReferenceTemperature;
        /// <summary>1 when lower_mm is given, else 0.</summary>
        public int HasLower;
        /// <summary>1 when upper_mm is given, else 0.</summary>
        public int HasUpper;
        /// <summary>1 when guard_band_mm is given, else 0.</summary>
        public int HasGuardBand;
        /// <summary>1 when rejection_guard_band_mm is given, else 0.</summary>
        public int HasRejectionGuardBand;
        /// <summary>1 when uncertainty_ratio is given, else 0.</summary>
        public int HasUncertaintyRatio;
        /// <summary>1 when probability_of_conformity is given, else 0.</summary>
        public int HasProbability;
        /// <summary>The value at the reference temperature of its limit.</summary>
        public double ValueMm;
        /// <summary>Its standard uncertainty.</summary>
        public double StandardUncertaintyMm;
        /// <summary>Its effective degrees of freedom; INFINITY when they are infinite.</summary>
        public double Dof;
        /// <summary>Reference temperature of the limit.</summary>
        public double ReferenceTemperatureC;
        /// <summary>Lower limit.</summary>
        public double LowerMm;
        /// <summary>Upper limit.</summary>
        public double UpperMm;
        /// <summary>What a value must lie inside the limits to conform; below 0 it may lie outside.</summary>
        public double GuardBandMm;
        /// <summary>What a value must lie outside the limits to not conform; below 0 it may lie inside.</summary>
        public double RejectionGuardBandMm;
        /// <summary>Tolerance over the uncertainty interval 2 U.</summary>
        public double UncertaintyRatio;
        /// <summary>Probability that the true value conforms.</summary>
        public double ProbabilityOfConformity;
    }

    /// <summary>A contributor of a stack. A plain structure.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal partial struct Contributor
    {
        /// <summary>Its name, which no other contributor and no shared cause has.</summary>
        public IntPtr Name;
        /// <summary>Length of the name in bytes.</summary>
        internal UIntPtr NameLength;
        /// <summary>Nominal size.</summary>
        public double Nominal;
        /// <summary>Lowest deviation that its limits allow.</summary>
        public double Lower;
        /// <summary>Highest deviation that its limits allow.</summary>
        public double Upper;
        /// <summary>Change of the stack for a change of this: 1 where it adds, -1 where it subtracts.</summary>
        public double Coefficient;
        /// <summary>How many independent pieces there are: 1 to 1000.</summary>
        internal UIntPtr Count;
        /// <summary>A GaugepointVariation.</summary>
        public Variation Kind;
        /// <summary>Not used; 0.</summary>
        public int Reserved;
        /// <summary>The numbers of the kind.</summary>
        public IntPtr Numbers;
        /// <summary>How many numbers there are.</summary>
        internal UIntPtr NumberCount;
    }

    /// <summary>Probabilities outside limits; see RECORDS at the head.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct Tail
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>Probability below the lower limit.</summary>
        public double Below;
        /// <summary>Probability above the upper limit.</summary>
        public double Above;
        /// <summary>Bound of the relative error of both.</summary>
        public double Error;
        /// <summary>Parts per million outside.</summary>
        public double Ppm;
    }

    /// <summary>
    /// A law of expansion, as the functions growth_... have it; its form says which fields count. A plain
    /// structure; start it zeroed.
    /// </summary>
    [StructLayout(LayoutKind.Sequential)]
    internal partial struct Law
    {
        /// <summary>A GaugepointLawForm.</summary>
        public LawForm Form;
        /// <summary>Not used; 0.</summary>
        public int Reserved;
        /// <summary>Temperature the means start from.</summary>
        public double BaseC;
        /// <summary>The mean coefficient.</summary>
        public double MeanPerK;
        /// <summary>Lowest temperature it holds at.</summary>
        public double FromC;
        /// <summary>Highest temperature it holds at.</summary>
        public double ToC;
        /// <summary>Rising temperatures of a table, count of them.</summary>
        public IntPtr TemperaturesC;
        /// <summary>
        /// Coefficients of a table per kelvin, or of a polynomial over kelvin from the constant up; count of
        /// them.
        /// </summary>
        public IntPtr Coefficients;
        /// <summary>How many there are.</summary>
        internal UIntPtr Count;
        /// <summary>Nodularity of graphite iron, in %.</summary>
        public double NodularityPercent;
        /// <summary>Area fraction of graphite, in %.</summary>
        public double GraphitePercent;
        /// <summary>Pearlite over ferrite.</summary>
        public double PearliteToFerrite;
        /// <summary>Name of a built-in material.</summary>
        public IntPtr Name;
        /// <summary>Its length in bytes.</summary>
        internal UIntPtr NameLength;
    }

    /// <summary>What a law of expansion says of one temperature; see RECORDS at the head.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct Growth
    {
        /// <summary>Size of this structure in bytes, set by the caller.</summary>
        internal UIntPtr StructSize;
        /// <summary>1 when mean_from_20_per_k is given, else 0: at 20 C there is no mean from 20 C.</summary>
        public int HasMean;
        /// <summary>0.</summary>
        public int Reserved;
        /// <summary>Strain from 20 C: (L - L20) / L20.</summary>
        public double Strain;
        /// <summary>Instantaneous coefficient, (1 / L20) dL/dT.</summary>
        public double InstantaneousPerK;
        /// <summary>Mean coefficient from 20 C.</summary>
        public double MeanFrom20PerK;
    }

    public static partial class Library
    {
        /// <summary>Number of the ABI that this binding is for.</summary>
        public const int Abi = 1;
    }

    /// <summary>Functions of plain doubles that give one double; the last word of a name is its unit.</summary>
    public static class Flat
    {
        /// <summary>
        /// Size at 20 C from the reading of a micrometer or caliper, in mm.
        ///
        /// (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from
        /// -5 C to 60 C, mean coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and
        /// the definition of strain.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double SizeAt20Mm(double readingMm, double zeroErrorMm, double gaugeTemperatureC, double gaugeExpansionPerK, double partTemperatureC, double partExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_size_at_20_mm(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_size_at_20_mm(double readingMm, double zeroErrorMm, double gaugeTemperatureC, double gaugeExpansionPerK, double partTemperatureC, double partExpansionPerK, out double result, ref Error error);

        /// <summary>SizeAt20Mm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] SizeAt20Mm(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK)];
            error.Check(gaugepoint_size_at_20_mm_array(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>SizeAt20Mm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] SizeAt20Mm(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_size_at_20_mm_array(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_size_at_20_mm_array(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double BenchClearanceMm(double boreMm, double pistonMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_bench_clearance_mm(boreMm, pistonMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_bench_clearance_mm(double boreMm, double pistonMm, out double result, ref Error error);

        /// <summary>BenchClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] BenchClearanceMm(double[] boreMm, double[] pistonMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, pistonMm)];
            error.Check(gaugepoint_bench_clearance_mm_array(boreMm, pistonMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>BenchClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] BenchClearanceMm(double[] boreMm, double[] pistonMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, pistonMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_bench_clearance_mm_array(boreMm, pistonMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_bench_clearance_mm_array(double[] boreMm, double[] pistonMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
        ///
        /// bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to
        /// 450 C. It is not a verdict: skirts are elastic, and engines run for years with a free clearance
        /// below zero. Source: definition of strain.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RunningClearanceMm(double boreMm, double boreTemperatureC, double boreExpansionPerK, double pistonMm, double pistonTemperatureC, double pistonExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_running_clearance_mm(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_running_clearance_mm(double boreMm, double boreTemperatureC, double boreExpansionPerK, double pistonMm, double pistonTemperatureC, double pistonExpansionPerK, out double result, ref Error error);

        /// <summary>RunningClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RunningClearanceMm(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK)];
            error.Check(gaugepoint_running_clearance_mm_array(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RunningClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RunningClearanceMm(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_running_clearance_mm_array(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_running_clearance_mm_array(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi
        /// (bore - gauge).
        ///
        /// Refused when gauge and bore are more than 2 % apart.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingGapInBoreMm(double gapMm, double gaugeMm, double boreMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_gap_in_bore_mm(gapMm, gaugeMm, boreMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_gap_in_bore_mm(double gapMm, double gaugeMm, double boreMm, out double result, ref Error error);

        /// <summary>RingGapInBoreMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingGapInBoreMm(double[] gapMm, double[] gaugeMm, double[] boreMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(gapMm, gaugeMm, boreMm)];
            error.Check(gaugepoint_ring_gap_in_bore_mm_array(gapMm, gaugeMm, boreMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingGapInBoreMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingGapInBoreMm(double[] gapMm, double[] gaugeMm, double[] boreMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(gapMm, gaugeMm, boreMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_gap_in_bore_mm_array(gapMm, gaugeMm, boreMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_gap_in_bore_mm_array(double[] gapMm, double[] gaugeMm, double[] boreMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Least cold gap, in mm, that leaves least_hot_gap_mm with bore and ring at their temperatures.
        ///
        /// Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingLeastColdGapMm(double leastHotGapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_least_cold_gap_mm(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_least_cold_gap_mm(double leastHotGapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK, out double result, ref Error error);

        /// <summary>RingLeastColdGapMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingLeastColdGapMm(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
            error.Check(gaugepoint_ring_least_cold_gap_mm_array(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingLeastColdGapMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingLeastColdGapMm(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_least_cold_gap_mm_array(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_least_cold_gap_mm_array(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm
        /// it is another ring.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingSideClearanceMm(double grooveWidthMm, double ringWidthMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_side_clearance_mm(grooveWidthMm, ringWidthMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_side_clearance_mm(double grooveWidthMm, double ringWidthMm, out double result, ref Error error);

        /// <summary>RingSideClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingSideClearanceMm(double[] grooveWidthMm, double[] ringWidthMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(grooveWidthMm, ringWidthMm)];
            error.Check(gaugepoint_ring_side_clearance_mm_array(grooveWidthMm, ringWidthMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingSideClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingSideClearanceMm(double[] grooveWidthMm, double[] ringWidthMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(grooveWidthMm, ringWidthMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_side_clearance_mm_array(grooveWidthMm, ringWidthMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_side_clearance_mm_array(double[] grooveWidthMm, double[] ringWidthMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
        ///
        /// With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the
        /// land.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingBackClearanceMm(double boreMm, double grooveRootMm, double ringThicknessMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_back_clearance_mm(boreMm, grooveRootMm, ringThicknessMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_back_clearance_mm(double boreMm, double grooveRootMm, double ringThicknessMm, out double result, ref Error error);

        /// <summary>RingBackClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingBackClearanceMm(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, grooveRootMm, ringThicknessMm)];
            error.Check(gaugepoint_ring_back_clearance_mm_array(boreMm, grooveRootMm, ringThicknessMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingBackClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingBackClearanceMm(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, grooveRootMm, ringThicknessMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_back_clearance_mm_array(boreMm, grooveRootMm, ringThicknessMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_back_clearance_mm_array(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>Wear of a groove, in mm: its width where it is widest less its width when new.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingGrooveWearMm(double grooveWidthMm, double newGrooveWidthMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_groove_wear_mm(grooveWidthMm, newGrooveWidthMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_groove_wear_mm(double grooveWidthMm, double newGrooveWidthMm, out double result, ref Error error);

        /// <summary>RingGrooveWearMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingGrooveWearMm(double[] grooveWidthMm, double[] newGrooveWidthMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(grooveWidthMm, newGrooveWidthMm)];
            error.Check(gaugepoint_ring_groove_wear_mm_array(grooveWidthMm, newGrooveWidthMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingGrooveWearMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingGrooveWearMm(double[] grooveWidthMm, double[] newGrooveWidthMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(grooveWidthMm, newGrooveWidthMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_groove_wear_mm_array(grooveWidthMm, newGrooveWidthMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_groove_wear_mm_array(double[] grooveWidthMm, double[] newGrooveWidthMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two
        /// pins that lie in it opposite each other.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double KeystoneGrooveWidthMm(double overPinsMm, double pinMm, double includedAngleDeg, double atDiameterMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_keystone_groove_width_mm(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_keystone_groove_width_mm(double overPinsMm, double pinMm, double includedAngleDeg, double atDiameterMm, out double result, ref Error error);

        /// <summary>KeystoneGrooveWidthMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] KeystoneGrooveWidthMm(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(overPinsMm, pinMm, includedAngleDeg, atDiameterMm)];
            error.Check(gaugepoint_keystone_groove_width_mm_array(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>KeystoneGrooveWidthMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] KeystoneGrooveWidthMm(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(overPinsMm, pinMm, includedAngleDeg, atDiameterMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_keystone_groove_width_mm_array(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_keystone_groove_width_mm_array(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingGapByFactorMm(double boreMm, double perMille)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_gap_by_factor_mm(boreMm, perMille, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_gap_by_factor_mm(double boreMm, double perMille, out double result, ref Error error);

        /// <summary>RingGapByFactorMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingGapByFactorMm(double[] boreMm, double[] perMille)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, perMille)];
            error.Check(gaugepoint_ring_gap_by_factor_mm_array(boreMm, perMille, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingGapByFactorMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingGapByFactorMm(double[] boreMm, double[] perMille, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, perMille)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_gap_by_factor_mm_array(boreMm, perMille, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_gap_by_factor_mm_array(double[] boreMm, double[] perMille, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RodAngleMrad(double deviationMm, double baseMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_rod_angle_mrad(deviationMm, baseMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_rod_angle_mrad(double deviationMm, double baseMm, out double result, ref Error error);

        /// <summary>RodAngleMrad of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RodAngleMrad(double[] deviationMm, double[] baseMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deviationMm, baseMm)];
            error.Check(gaugepoint_rod_angle_mrad_array(deviationMm, baseMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RodAngleMrad of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RodAngleMrad(double[] deviationMm, double[] baseMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deviationMm, baseMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_rod_angle_mrad_array(deviationMm, baseMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_rod_angle_mrad_array(double[] deviationMm, double[] baseMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RodSkewMm(double angleMrad, double lengthMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_rod_skew_mm(angleMrad, lengthMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_rod_skew_mm(double angleMrad, double lengthMm, out double result, ref Error error);

        /// <summary>RodSkewMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RodSkewMm(double[] angleMrad, double[] lengthMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(angleMrad, lengthMm)];
            error.Check(gaugepoint_rod_skew_mm_array(angleMrad, lengthMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RodSkewMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RodSkewMm(double[] angleMrad, double[] lengthMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(angleMrad, lengthMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_rod_skew_mm_array(angleMrad, lengthMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_rod_skew_mm_array(double[] angleMrad, double[] lengthMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>Volume in cm3 between top land and bore, down to the first ring.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double TopLandCreviceCm3(double boreMm, double landMm, double landHeightMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_top_land_crevice_cm3(boreMm, landMm, landHeightMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_top_land_crevice_cm3(double boreMm, double landMm, double landHeightMm, out double result, ref Error error);

        /// <summary>TopLandCreviceCm3 of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] TopLandCreviceCm3(double[] boreMm, double[] landMm, double[] landHeightMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, landMm, landHeightMm)];
            error.Check(gaugepoint_top_land_crevice_cm3_array(boreMm, landMm, landHeightMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>TopLandCreviceCm3 of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] TopLandCreviceCm3(double[] boreMm, double[] landMm, double[] landHeightMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, landMm, landHeightMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_top_land_crevice_cm3_array(boreMm, landMm, landHeightMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_top_land_crevice_cm3_array(double[] boreMm, double[] landMm, double[] landHeightMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel;
        /// heights up from the bottom edge of the skirt.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double DepthInBoreMm(double deckClearanceMm, double crownHeightMm, double heightMm, double travelMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_depth_in_bore_mm(deckClearanceMm, crownHeightMm, heightMm, travelMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_depth_in_bore_mm(double deckClearanceMm, double crownHeightMm, double heightMm, double travelMm, out double result, ref Error error);

        /// <summary>DepthInBoreMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] DepthInBoreMm(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deckClearanceMm, crownHeightMm, heightMm, travelMm)];
            error.Check(gaugepoint_depth_in_bore_mm_array(deckClearanceMm, crownHeightMm, heightMm, travelMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>DepthInBoreMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] DepthInBoreMm(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deckClearanceMm, crownHeightMm, heightMm, travelMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_depth_in_bore_mm_array(deckClearanceMm, crownHeightMm, heightMm, travelMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_depth_in_bore_mm_array(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Length in mm from inches, -400 in to 400 in.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is
        /// 61.28004 mm. Source: NIST SP 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double InchToMm(double lengthInch)
        {
            var error = Error.Start();
            error.Check(gaugepoint_inch_to_mm(lengthInch, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_inch_to_mm(double lengthInch, out double result, ref Error error);

        /// <summary>InchToMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] InchToMm(double[] lengthInch)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthInch)];
            error.Check(gaugepoint_inch_to_mm_array(lengthInch, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>InchToMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] InchToMm(double[] lengthInch, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthInch)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_inch_to_mm_array(lengthInch, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_inch_to_mm_array(double[] lengthInch, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Length in inches from mm, -10160 mm to 10160 mm.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        /// 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double MmToInch(double lengthMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_mm_to_inch(lengthMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_mm_to_inch(double lengthMm, out double result, ref Error error);

        /// <summary>MmToInch of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] MmToInch(double[] lengthMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthMm)];
            error.Check(gaugepoint_mm_to_inch_array(lengthMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>MmToInch of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] MmToInch(double[] lengthMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_mm_to_inch_array(lengthMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_mm_to_inch_array(double[] lengthMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        /// 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double ThouToMm(double lengthThou)
        {
            var error = Error.Start();
            error.Check(gaugepoint_thou_to_mm(lengthThou, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_thou_to_mm(double lengthThou, out double result, ref Error error);

        /// <summary>ThouToMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] ThouToMm(double[] lengthThou)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthThou)];
            error.Check(gaugepoint_thou_to_mm_array(lengthThou, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>ThouToMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] ThouToMm(double[] lengthThou, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(lengthThou)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_thou_to_mm_array(lengthThou, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_thou_to_mm_array(double[] lengthThou, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of
        /// temperatures is another thing.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C.
        /// Source: NIST SP 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double FahrenheitToC(double temperatureFahrenheit)
        {
            var error = Error.Start();
            error.Check(gaugepoint_fahrenheit_to_c(temperatureFahrenheit, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_fahrenheit_to_c(double temperatureFahrenheit, out double result, ref Error error);

        /// <summary>FahrenheitToC of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] FahrenheitToC(double[] temperatureFahrenheit)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(temperatureFahrenheit)];
            error.Check(gaugepoint_fahrenheit_to_c_array(temperatureFahrenheit, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>FahrenheitToC of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] FahrenheitToC(double[] temperatureFahrenheit, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(temperatureFahrenheit)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_fahrenheit_to_c_array(temperatureFahrenheit, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_fahrenheit_to_c_array(double[] temperatureFahrenheit, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of
        /// temperatures is another thing.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        /// 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double CToFahrenheit(double temperatureC)
        {
            var error = Error.Start();
            error.Check(gaugepoint_c_to_fahrenheit(temperatureC, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_c_to_fahrenheit(double temperatureC, out double result, ref Error error);

        /// <summary>CToFahrenheit of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] CToFahrenheit(double[] temperatureC)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(temperatureC)];
            error.Check(gaugepoint_c_to_fahrenheit_array(temperatureC, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>CToFahrenheit of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] CToFahrenheit(double[] temperatureC, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(temperatureC)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_c_to_fahrenheit_array(temperatureC, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_c_to_fahrenheit_array(double[] temperatureC, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree
        /// Fahrenheit: 1.8 times as much.
        ///
        /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        /// 811 (2008), appendix B.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PerFahrenheitToPerK(double expansionPerFahrenheit)
        {
            var error = Error.Start();
            error.Check(gaugepoint_per_fahrenheit_to_per_k(expansionPerFahrenheit, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_per_fahrenheit_to_per_k(double expansionPerFahrenheit, out double result, ref Error error);

        /// <summary>PerFahrenheitToPerK of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PerFahrenheitToPerK(double[] expansionPerFahrenheit)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(expansionPerFahrenheit)];
            error.Check(gaugepoint_per_fahrenheit_to_per_k_array(expansionPerFahrenheit, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PerFahrenheitToPerK of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PerFahrenheitToPerK(double[] expansionPerFahrenheit, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(expansionPerFahrenheit)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_per_fahrenheit_to_per_k_array(expansionPerFahrenheit, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_per_fahrenheit_to_per_k_array(double[] expansionPerFahrenheit, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below
        /// zero the ends butt.
        ///
        /// gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot
        /// circumference of the bore less the hot length of the ring.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double RingHotGapMm(double gapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_ring_hot_gap_mm(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_hot_gap_mm(double gapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK, out double result, ref Error error);

        /// <summary>RingHotGapMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] RingHotGapMm(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
            error.Check(gaugepoint_ring_hot_gap_mm_array(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>RingHotGapMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] RingHotGapMm(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_ring_hot_gap_mm_array(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_ring_hot_gap_mm_array(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is
        /// interference.
        ///
        /// Refused when it is not between -0.15 mm and 0.2 mm: another pin.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PinColdClearanceMm(double holeMm, double pinMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_pin_cold_clearance_mm(holeMm, pinMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_pin_cold_clearance_mm(double holeMm, double pinMm, out double result, ref Error error);

        /// <summary>PinColdClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PinColdClearanceMm(double[] holeMm, double[] pinMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(holeMm, pinMm)];
            error.Check(gaugepoint_pin_cold_clearance_mm_array(holeMm, pinMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PinColdClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PinColdClearanceMm(double[] holeMm, double[] pinMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(holeMm, pinMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_pin_cold_clearance_mm_array(holeMm, pinMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_pin_cold_clearance_mm_array(double[] holeMm, double[] pinMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20
        /// C.
        ///
        /// hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A
        /// pressed bush grows by the coefficient of what holds it. Source: definition of strain.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PinHotClearanceMm(double holeMm, double holeTemperatureC, double holeExpansionPerK, double pinMm, double pinTemperatureC, double pinExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_pin_hot_clearance_mm(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_pin_hot_clearance_mm(double holeMm, double holeTemperatureC, double holeExpansionPerK, double pinMm, double pinTemperatureC, double pinExpansionPerK, out double result, ref Error error);

        /// <summary>PinHotClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PinHotClearanceMm(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK)];
            error.Check(gaugepoint_pin_hot_clearance_mm_array(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PinHotClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PinHotClearanceMm(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_pin_hot_clearance_mm_array(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_pin_hot_clearance_mm_array(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the
        /// interference.
        ///
        /// Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free
        /// ends.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PressFitPressureMpa(double pinMm, double pinHoleMm, double eyeMm, double interferenceMm, double smoothingMm, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson)
        {
            var error = Error.Start();
            error.Check(gaugepoint_press_fit_pressure_mpa(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_pressure_mpa(double pinMm, double pinHoleMm, double eyeMm, double interferenceMm, double smoothingMm, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, out double result, ref Error error);

        /// <summary>PressFitPressureMpa of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PressFitPressureMpa(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            error.Check(gaugepoint_press_fit_pressure_mpa_array(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PressFitPressureMpa of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PressFitPressureMpa(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_press_fit_pressure_mpa_array(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_pressure_mpa_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
        ///
        /// The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PressFitForceN(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson)
        {
            var error = Error.Start();
            error.Check(gaugepoint_press_fit_force_n(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_force_n(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, out double result, ref Error error);

        /// <summary>PressFitForceN of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PressFitForceN(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            error.Check(gaugepoint_press_fit_force_n_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PressFitForceN of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PressFitForceN(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_press_fit_force_n_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_force_n_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Torque in N m at which a pin pressed into an eye slips: force pin / 2.
        ///
        /// The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PressFitTorqueNm(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson)
        {
            var error = Error.Start();
            error.Check(gaugepoint_press_fit_torque_nm(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_torque_nm(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, out double result, ref Error error);

        /// <summary>PressFitTorqueNm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PressFitTorqueNm(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            error.Check(gaugepoint_press_fit_torque_nm_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PressFitTorqueNm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PressFitTorqueNm(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_press_fit_torque_nm_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_press_fit_torque_nm_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole
        /// opens by the interference and a clearance: 20 + (interference + clearance) / (a diameter).
        ///
        /// Clean steel colours from 249 C: too much heat. Source: free growth.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double AssemblyTemperatureC(double diameterMm, double interferenceMm, double clearanceMm, double expansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_assembly_temperature_c(diameterMm, interferenceMm, clearanceMm, expansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_assembly_temperature_c(double diameterMm, double interferenceMm, double clearanceMm, double expansionPerK, out double result, ref Error error);

        /// <summary>AssemblyTemperatureC of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] AssemblyTemperatureC(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(diameterMm, interferenceMm, clearanceMm, expansionPerK)];
            error.Check(gaugepoint_assembly_temperature_c_array(diameterMm, interferenceMm, clearanceMm, expansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>AssemblyTemperatureC of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] AssemblyTemperatureC(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(diameterMm, interferenceMm, clearanceMm, expansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_assembly_temperature_c_array(diameterMm, interferenceMm, clearanceMm, expansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_assembly_temperature_c_array(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression
        /// height); negative when the crown stands above the deck.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PistonDeckClearanceMm(double blockHeightMm, double strokeMm, double rodMm, double compressionHeightMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_piston_deck_clearance_mm(blockHeightMm, strokeMm, rodMm, compressionHeightMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_piston_deck_clearance_mm(double blockHeightMm, double strokeMm, double rodMm, double compressionHeightMm, out double result, ref Error error);

        /// <summary>PistonDeckClearanceMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PistonDeckClearanceMm(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(blockHeightMm, strokeMm, rodMm, compressionHeightMm)];
            error.Check(gaugepoint_piston_deck_clearance_mm_array(blockHeightMm, strokeMm, rodMm, compressionHeightMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PistonDeckClearanceMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PistonDeckClearanceMm(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(blockHeightMm, strokeMm, rodMm, compressionHeightMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_piston_deck_clearance_mm_array(blockHeightMm, strokeMm, rodMm, compressionHeightMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_piston_deck_clearance_mm_array(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double SweptVolumeCm3(double boreMm, double strokeMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_swept_volume_cm3(boreMm, strokeMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_swept_volume_cm3(double boreMm, double strokeMm, out double result, ref Error error);

        /// <summary>SweptVolumeCm3 of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] SweptVolumeCm3(double[] boreMm, double[] strokeMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, strokeMm)];
            error.Check(gaugepoint_swept_volume_cm3_array(boreMm, strokeMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>SweptVolumeCm3 of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] SweptVolumeCm3(double[] boreMm, double[] strokeMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, strokeMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_swept_volume_cm3_array(boreMm, strokeMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_swept_volume_cm3_array(double[] boreMm, double[] strokeMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
        ///
        /// A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the
        /// crevice at the top land out, as is usual. Refused when nothing is left above the piston.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double StaticCompressionRatio(double boreMm, double strokeMm, double headCm3, double gasketBoreMm, double gasketMm, double deckClearanceMm, double crownCm3, double creviceCm3)
        {
            var error = Error.Start();
            error.Check(gaugepoint_static_compression_ratio(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_static_compression_ratio(double boreMm, double strokeMm, double headCm3, double gasketBoreMm, double gasketMm, double deckClearanceMm, double crownCm3, double creviceCm3, out double result, ref Error error);

        /// <summary>StaticCompressionRatio of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] StaticCompressionRatio(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3)];
            error.Check(gaugepoint_static_compression_ratio_array(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>StaticCompressionRatio of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] StaticCompressionRatio(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_static_compression_ratio_array(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_static_compression_ratio_array(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
        ///
        /// The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major
        /// thrust side is positive. Source: slider-crank with an offset pin.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double PistonTravelMm(double crankRadiusMm, double rodMm, double pinOffsetMm, double crankAngleDeg)
        {
            var error = Error.Start();
            error.Check(gaugepoint_piston_travel_mm(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_piston_travel_mm(double crankRadiusMm, double rodMm, double pinOffsetMm, double crankAngleDeg, out double result, ref Error error);

        /// <summary>PistonTravelMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] PistonTravelMm(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg)];
            error.Check(gaugepoint_piston_travel_mm_array(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>PistonTravelMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] PistonTravelMm(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_piston_travel_mm_array(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_piston_travel_mm_array(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the
        /// bench.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double FinishSizeMm(double pistonMm, double clearanceMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_finish_size_mm(pistonMm, clearanceMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_finish_size_mm(double pistonMm, double clearanceMm, out double result, ref Error error);

        /// <summary>FinishSizeMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] FinishSizeMm(double[] pistonMm, double[] clearanceMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pistonMm, clearanceMm)];
            error.Check(gaugepoint_finish_size_mm_array(pistonMm, clearanceMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>FinishSizeMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] FinishSizeMm(double[] pistonMm, double[] clearanceMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pistonMm, clearanceMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_finish_size_mm_array(pistonMm, clearanceMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_finish_size_mm_array(double[] pistonMm, double[] clearanceMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench
        /// - what is left for the hone.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double BoringSizeMm(double pistonMm, double clearanceMm, double honingMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_boring_size_mm(pistonMm, clearanceMm, honingMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_boring_size_mm(double pistonMm, double clearanceMm, double honingMm, out double result, ref Error error);

        /// <summary>BoringSizeMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] BoringSizeMm(double[] pistonMm, double[] clearanceMm, double[] honingMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pistonMm, clearanceMm, honingMm)];
            error.Check(gaugepoint_boring_size_mm_array(pistonMm, clearanceMm, honingMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>BoringSizeMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] BoringSizeMm(double[] pistonMm, double[] clearanceMm, double[] honingMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(pistonMm, clearanceMm, honingMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_boring_size_mm_array(pistonMm, clearanceMm, honingMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_boring_size_mm_array(double[] pistonMm, double[] clearanceMm, double[] honingMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive
        /// when the bore is larger.
        ///
        /// (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) +
        /// deviation) / (1 + a_block (t_block - 20)): the gauge when it was set, and when it is used.
        /// Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double BoreSizeAt20Mm(double deviationMm, double settingMm, double ringTemperatureC, double ringExpansionPerK, double setTemperatureC, double setExpansionPerK, double usedTemperatureC, double usedExpansionPerK, double blockTemperatureC, double blockExpansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_bore_size_at_20_mm(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_bore_size_at_20_mm(double deviationMm, double settingMm, double ringTemperatureC, double ringExpansionPerK, double setTemperatureC, double setExpansionPerK, double usedTemperatureC, double usedExpansionPerK, double blockTemperatureC, double blockExpansionPerK, out double result, ref Error error);

        /// <summary>BoreSizeAt20Mm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] BoreSizeAt20Mm(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK)];
            error.Check(gaugepoint_bore_size_at_20_mm_array(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>BoreSizeAt20Mm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] BoreSizeAt20Mm(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_bore_size_at_20_mm_array(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_bore_size_at_20_mm_array(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
        ///
        /// Temperatures from -40 C to 450 C. Source: definition of strain.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double SizeAtTemperatureMm(double sizeMm, double temperatureC, double expansionPerK)
        {
            var error = Error.Start();
            error.Check(gaugepoint_size_at_temperature_mm(sizeMm, temperatureC, expansionPerK, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_size_at_temperature_mm(double sizeMm, double temperatureC, double expansionPerK, out double result, ref Error error);

        /// <summary>SizeAtTemperatureMm of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] SizeAtTemperatureMm(double[] sizeMm, double[] temperatureC, double[] expansionPerK)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(sizeMm, temperatureC, expansionPerK)];
            error.Check(gaugepoint_size_at_temperature_mm_array(sizeMm, temperatureC, expansionPerK, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>SizeAtTemperatureMm of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] SizeAtTemperatureMm(double[] sizeMm, double[] temperatureC, double[] expansionPerK, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(sizeMm, temperatureC, expansionPerK)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_size_at_temperature_mm_array(sizeMm, temperatureC, expansionPerK, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_size_at_temperature_mm_array(double[] sizeMm, double[] temperatureC, double[] expansionPerK, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Probability that the true value lies within two limits, for a value with a normal error of a
        /// standard uncertainty.
        ///
        /// A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double ProbabilityOfConformity(double valueMm, double standardUncertaintyMm, double lowerMm, double upperMm)
        {
            var error = Error.Start();
            error.Check(gaugepoint_probability_of_conformity(valueMm, standardUncertaintyMm, lowerMm, upperMm, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_probability_of_conformity(double valueMm, double standardUncertaintyMm, double lowerMm, double upperMm, out double result, ref Error error);

        /// <summary>ProbabilityOfConformity of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] ProbabilityOfConformity(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(valueMm, standardUncertaintyMm, lowerMm, upperMm)];
            error.Check(gaugepoint_probability_of_conformity_array(valueMm, standardUncertaintyMm, lowerMm, upperMm, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>ProbabilityOfConformity of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] ProbabilityOfConformity(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(valueMm, standardUncertaintyMm, lowerMm, upperMm)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_probability_of_conformity_array(valueMm, standardUncertaintyMm, lowerMm, upperMm, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_probability_of_conformity_array(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);

        /// <summary>
        /// Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
        ///
        /// dof from 0.5; INFINITY gives that of the normal.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double CoverageFactor(double probability, double dof)
        {
            var error = Error.Start();
            error.Check(gaugepoint_coverage_factor(probability, dof, out double result, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_coverage_factor(double probability, double dof, out double result, ref Error error);

        /// <summary>CoverageFactor of each row: the first row that is refused refuses the call.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static double[] CoverageFactor(double[] probability, double[] dof)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(probability, dof)];
            error.Check(gaugepoint_coverage_factor_array(probability, dof, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }

        /// <summary>CoverageFactor of each row: 0 or why it is refused, and NaN, for each.</summary>
        public static double[] CoverageFactor(double[] probability, double[] dof, out Status[] rowStatus)
        {
            var error = Error.Start();
            var result = new double[Rows.Of(probability, dof)];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_coverage_factor_array(probability, dof, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_coverage_factor_array(double[] probability, double[] dof, UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus, ref Error error);
    }

    /// <summary>Documents in, reports out, both JSON.</summary>
    public static class Documents
    {
        /// <summary>Assesses a job document and gives its report, both JSON.</summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string JobAssess(string document, bool withWorking = false) => JobAssess(Text.In(document), withWorking);

        /// <summary>JobAssess of UTF-8.</summary>
        public static string JobAssess(byte[] document, bool withWorking = false)
        {
            var error = Error.Start();
            error.Check(gaugepoint_job_assess(document, Text.Length(document), withWorking ? 1 : 0, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_job_assess(byte[] document, UIntPtr documentLength, int withWorking, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>Holds the limits of a printed sheet against themselves and gives the report, both JSON.</summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string SheetCheck(string document) => SheetCheck(Text.In(document));

        /// <summary>SheetCheck of UTF-8.</summary>
        public static string SheetCheck(byte[] document)
        {
            var error = Error.Start();
            error.Check(gaugepoint_sheet_check(document, Text.Length(document), out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_sheet_check(byte[] document, UIntPtr documentLength, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>
        /// Evaluates a measurement document and gives its report, both JSON: the readings and their differences
        /// with the budget of each, to first
        /// </summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string Measure(string document, bool withWorking = false) => Measure(Text.In(document), withWorking);

        /// <summary>Measure of UTF-8.</summary>
        public static string Measure(byte[] document, bool withWorking = false)
        {
            var error = Error.Start();
            error.Check(gaugepoint_measure(document, Text.Length(document), withWorking ? 1 : 0, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_measure(byte[] document, UIntPtr documentLength, int withWorking, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>
        /// Computes the hot fit of one piston in one bore and gives its report, both JSON: the clearance
        /// everywhere and at temperature, its smallest value
        /// </summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string Fit(string document, bool withWorking = false) => Fit(Text.In(document), withWorking);

        /// <summary>Fit of UTF-8.</summary>
        public static string Fit(byte[] document, bool withWorking = false)
        {
            var error = Error.Start();
            error.Check(gaugepoint_fit(document, Text.Length(document), withWorking ? 1 : 0, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_fit(byte[] document, UIntPtr documentLength, int withWorking, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>Evaluates a budget of uncertainty and gives its report, both JSON.</summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string BudgetEvaluate(string document) => BudgetEvaluate(Text.In(document));

        /// <summary>BudgetEvaluate of UTF-8.</summary>
        public static string BudgetEvaluate(byte[] document)
        {
            var error = Error.Start();
            error.Check(gaugepoint_budget_evaluate(document, Text.Length(document), out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_budget_evaluate(byte[] document, UIntPtr documentLength, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>
        /// Evaluates a stack of contributors and gives its report, both JSON: worst case, published forms,
        /// moments, shares, exact probabilities outside
        /// </summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string StackEvaluate(string document, bool withWorking = false) => StackEvaluate(Text.In(document), withWorking);

        /// <summary>StackEvaluate of UTF-8.</summary>
        public static string StackEvaluate(byte[] document, bool withWorking = false)
        {
            var error = Error.Start();
            error.Check(gaugepoint_stack_evaluate(document, Text.Length(document), withWorking ? 1 : 0, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_stack_evaluate(byte[] document, UIntPtr documentLength, int withWorking, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>
        /// Compares two jobs of one engine and gives the report, both JSON: what changed of every cylinder, how
        /// fast, when limits of this job are reached
        /// </summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string Revisit(string document) => Revisit(Text.In(document));

        /// <summary>Revisit of UTF-8.</summary>
        public static string Revisit(byte[] document)
        {
            var error = Error.Start();
            error.Check(gaugepoint_revisit(document, Text.Length(document), out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_revisit(byte[] document, UIntPtr documentLength, out IntPtr text, out UIntPtr length, ref Error error);

        /// <summary>
        /// Assesses a job with every combination of values and gives the report, both JSON: a row for each
        /// combination with what is to be shown, what
        /// </summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public static string WhatIf(string document) => WhatIf(Text.In(document));

        /// <summary>WhatIf of UTF-8.</summary>
        public static string WhatIf(byte[] document)
        {
            var error = Error.Start();
            error.Check(gaugepoint_what_if(document, Text.Length(document), out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_what_if(byte[] document, UIntPtr documentLength, out IntPtr text, out UIntPtr length, ref Error error);
    }
}
