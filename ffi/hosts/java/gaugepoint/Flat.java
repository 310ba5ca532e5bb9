package gaugepoint;

/** Functions of plain doubles of gaugepoint.h. Generated from it; the test that compares it also writes it. */
public final class Flat {
    static {
        Gaugepoint.register(Flat.class);
    }

    private Flat() {
    }

    /**
     * Size at 20 C from the reading of a micrometer or caliper, in mm.
     *
     * (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from
     * -5 C to 60 C, mean coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and
     * the definition of strain.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double sizeAt20Mm(double readingMm, double zeroErrorMm, double gaugeTemperatureC, double gaugeExpansionPerK, double partTemperatureC, double partExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_size_at_20_mm(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_size_at_20_mm(double readingMm, double zeroErrorMm, double gaugeTemperatureC, double gaugeExpansionPerK, double partTemperatureC, double partExpansionPerK, double[] out, Records.Error error);

    /**
     * sizeAt20Mm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] sizeAt20Mm(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK)];
        Gaugepoint.check(gaugepoint_size_at_20_mm_array(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** sizeAt20Mm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] sizeAt20Mm(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_size_at_20_mm_array(readingMm, zeroErrorMm, gaugeTemperatureC, gaugeExpansionPerK, partTemperatureC, partExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_size_at_20_mm_array(double[] readingMm, double[] zeroErrorMm, double[] gaugeTemperatureC, double[] gaugeExpansionPerK, double[] partTemperatureC, double[] partExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double benchClearanceMm(double boreMm, double pistonMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_bench_clearance_mm(boreMm, pistonMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_bench_clearance_mm(double boreMm, double pistonMm, double[] out, Records.Error error);

    /**
     * benchClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] benchClearanceMm(double[] boreMm, double[] pistonMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, pistonMm)];
        Gaugepoint.check(gaugepoint_bench_clearance_mm_array(boreMm, pistonMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** benchClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] benchClearanceMm(double[] boreMm, double[] pistonMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, pistonMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_bench_clearance_mm_array(boreMm, pistonMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_bench_clearance_mm_array(double[] boreMm, double[] pistonMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
     *
     * bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to
     * 450 C. It is not a verdict: skirts are elastic, and engines run for years with a free clearance
     * below zero. Source: definition of strain.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double runningClearanceMm(double boreMm, double boreTemperatureC, double boreExpansionPerK, double pistonMm, double pistonTemperatureC, double pistonExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_running_clearance_mm(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_running_clearance_mm(double boreMm, double boreTemperatureC, double boreExpansionPerK, double pistonMm, double pistonTemperatureC, double pistonExpansionPerK, double[] out, Records.Error error);

    /**
     * runningClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] runningClearanceMm(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK)];
        Gaugepoint.check(gaugepoint_running_clearance_mm_array(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** runningClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] runningClearanceMm(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_running_clearance_mm_array(boreMm, boreTemperatureC, boreExpansionPerK, pistonMm, pistonTemperatureC, pistonExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_running_clearance_mm_array(double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] pistonMm, double[] pistonTemperatureC, double[] pistonExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi
     * (bore - gauge).
     *
     * Refused when gauge and bore are more than 2 % apart.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringGapInBoreMm(double gapMm, double gaugeMm, double boreMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_gap_in_bore_mm(gapMm, gaugeMm, boreMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_gap_in_bore_mm(double gapMm, double gaugeMm, double boreMm, double[] out, Records.Error error);

    /**
     * ringGapInBoreMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringGapInBoreMm(double[] gapMm, double[] gaugeMm, double[] boreMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(gapMm, gaugeMm, boreMm)];
        Gaugepoint.check(gaugepoint_ring_gap_in_bore_mm_array(gapMm, gaugeMm, boreMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringGapInBoreMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringGapInBoreMm(double[] gapMm, double[] gaugeMm, double[] boreMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(gapMm, gaugeMm, boreMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_gap_in_bore_mm_array(gapMm, gaugeMm, boreMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_gap_in_bore_mm_array(double[] gapMm, double[] gaugeMm, double[] boreMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Least cold gap, in mm, that leaves least_hot_gap_mm with bore and ring at their temperatures.
     *
     * Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringLeastColdGapMm(double leastHotGapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_least_cold_gap_mm(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_least_cold_gap_mm(double leastHotGapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK, double[] out, Records.Error error);

    /**
     * ringLeastColdGapMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringLeastColdGapMm(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
        Gaugepoint.check(gaugepoint_ring_least_cold_gap_mm_array(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringLeastColdGapMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringLeastColdGapMm(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_least_cold_gap_mm_array(leastHotGapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_least_cold_gap_mm_array(double[] leastHotGapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm
     * it is another ring.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringSideClearanceMm(double grooveWidthMm, double ringWidthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_side_clearance_mm(grooveWidthMm, ringWidthMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_side_clearance_mm(double grooveWidthMm, double ringWidthMm, double[] out, Records.Error error);

    /**
     * ringSideClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringSideClearanceMm(double[] grooveWidthMm, double[] ringWidthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(grooveWidthMm, ringWidthMm)];
        Gaugepoint.check(gaugepoint_ring_side_clearance_mm_array(grooveWidthMm, ringWidthMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringSideClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringSideClearanceMm(double[] grooveWidthMm, double[] ringWidthMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(grooveWidthMm, ringWidthMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_side_clearance_mm_array(grooveWidthMm, ringWidthMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_side_clearance_mm_array(double[] grooveWidthMm, double[] ringWidthMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
     *
     * With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the
     * land.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringBackClearanceMm(double boreMm, double grooveRootMm, double ringThicknessMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_back_clearance_mm(boreMm, grooveRootMm, ringThicknessMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_back_clearance_mm(double boreMm, double grooveRootMm, double ringThicknessMm, double[] out, Records.Error error);

    /**
     * ringBackClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringBackClearanceMm(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, grooveRootMm, ringThicknessMm)];
        Gaugepoint.check(gaugepoint_ring_back_clearance_mm_array(boreMm, grooveRootMm, ringThicknessMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringBackClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringBackClearanceMm(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, grooveRootMm, ringThicknessMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_back_clearance_mm_array(boreMm, grooveRootMm, ringThicknessMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_back_clearance_mm_array(double[] boreMm, double[] grooveRootMm, double[] ringThicknessMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Wear of a groove, in mm: its width where it is widest less its width when new.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringGrooveWearMm(double grooveWidthMm, double newGrooveWidthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_groove_wear_mm(grooveWidthMm, newGrooveWidthMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_groove_wear_mm(double grooveWidthMm, double newGrooveWidthMm, double[] out, Records.Error error);

    /**
     * ringGrooveWearMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringGrooveWearMm(double[] grooveWidthMm, double[] newGrooveWidthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(grooveWidthMm, newGrooveWidthMm)];
        Gaugepoint.check(gaugepoint_ring_groove_wear_mm_array(grooveWidthMm, newGrooveWidthMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringGrooveWearMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringGrooveWearMm(double[] grooveWidthMm, double[] newGrooveWidthMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(grooveWidthMm, newGrooveWidthMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_groove_wear_mm_array(grooveWidthMm, newGrooveWidthMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_groove_wear_mm_array(double[] grooveWidthMm, double[] newGrooveWidthMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two
     * pins that lie in it opposite each other.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double keystoneGrooveWidthMm(double overPinsMm, double pinMm, double includedAngleDeg, double atDiameterMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_keystone_groove_width_mm(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_keystone_groove_width_mm(double overPinsMm, double pinMm, double includedAngleDeg, double atDiameterMm, double[] out, Records.Error error);

    /**
     * keystoneGrooveWidthMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] keystoneGrooveWidthMm(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(overPinsMm, pinMm, includedAngleDeg, atDiameterMm)];
        Gaugepoint.check(gaugepoint_keystone_groove_width_mm_array(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** keystoneGrooveWidthMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] keystoneGrooveWidthMm(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(overPinsMm, pinMm, includedAngleDeg, atDiameterMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_keystone_groove_width_mm_array(overPinsMm, pinMm, includedAngleDeg, atDiameterMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_keystone_groove_width_mm_array(double[] overPinsMm, double[] pinMm, double[] includedAngleDeg, double[] atDiameterMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringGapByFactorMm(double boreMm, double perMille) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_gap_by_factor_mm(boreMm, perMille, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_gap_by_factor_mm(double boreMm, double perMille, double[] out, Records.Error error);

    /**
     * ringGapByFactorMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringGapByFactorMm(double[] boreMm, double[] perMille) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, perMille)];
        Gaugepoint.check(gaugepoint_ring_gap_by_factor_mm_array(boreMm, perMille, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringGapByFactorMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringGapByFactorMm(double[] boreMm, double[] perMille, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, perMille)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_gap_by_factor_mm_array(boreMm, perMille, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_gap_by_factor_mm_array(double[] boreMm, double[] perMille, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double rodAngleMrad(double deviationMm, double baseMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_rod_angle_mrad(deviationMm, baseMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_rod_angle_mrad(double deviationMm, double baseMm, double[] out, Records.Error error);

    /**
     * rodAngleMrad of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] rodAngleMrad(double[] deviationMm, double[] baseMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deviationMm, baseMm)];
        Gaugepoint.check(gaugepoint_rod_angle_mrad_array(deviationMm, baseMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** rodAngleMrad of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] rodAngleMrad(double[] deviationMm, double[] baseMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deviationMm, baseMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_rod_angle_mrad_array(deviationMm, baseMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_rod_angle_mrad_array(double[] deviationMm, double[] baseMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double rodSkewMm(double angleMrad, double lengthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_rod_skew_mm(angleMrad, lengthMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_rod_skew_mm(double angleMrad, double lengthMm, double[] out, Records.Error error);

    /**
     * rodSkewMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] rodSkewMm(double[] angleMrad, double[] lengthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(angleMrad, lengthMm)];
        Gaugepoint.check(gaugepoint_rod_skew_mm_array(angleMrad, lengthMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** rodSkewMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] rodSkewMm(double[] angleMrad, double[] lengthMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(angleMrad, lengthMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_rod_skew_mm_array(angleMrad, lengthMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_rod_skew_mm_array(double[] angleMrad, double[] lengthMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Volume in cm3 between top land and bore, down to the first ring.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double topLandCreviceCm3(double boreMm, double landMm, double landHeightMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_top_land_crevice_cm3(boreMm, landMm, landHeightMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_top_land_crevice_cm3(double boreMm, double landMm, double landHeightMm, double[] out, Records.Error error);

    /**
     * topLandCreviceCm3 of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] topLandCreviceCm3(double[] boreMm, double[] landMm, double[] landHeightMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, landMm, landHeightMm)];
        Gaugepoint.check(gaugepoint_top_land_crevice_cm3_array(boreMm, landMm, landHeightMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** topLandCreviceCm3 of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] topLandCreviceCm3(double[] boreMm, double[] landMm, double[] landHeightMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, landMm, landHeightMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_top_land_crevice_cm3_array(boreMm, landMm, landHeightMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_top_land_crevice_cm3_array(double[] boreMm, double[] landMm, double[] landHeightMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel;
     * heights up from the bottom edge of the skirt.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double depthInBoreMm(double deckClearanceMm, double crownHeightMm, double heightMm, double travelMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_depth_in_bore_mm(deckClearanceMm, crownHeightMm, heightMm, travelMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_depth_in_bore_mm(double deckClearanceMm, double crownHeightMm, double heightMm, double travelMm, double[] out, Records.Error error);

    /**
     * depthInBoreMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] depthInBoreMm(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deckClearanceMm, crownHeightMm, heightMm, travelMm)];
        Gaugepoint.check(gaugepoint_depth_in_bore_mm_array(deckClearanceMm, crownHeightMm, heightMm, travelMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** depthInBoreMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] depthInBoreMm(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deckClearanceMm, crownHeightMm, heightMm, travelMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_depth_in_bore_mm_array(deckClearanceMm, crownHeightMm, heightMm, travelMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_depth_in_bore_mm_array(double[] deckClearanceMm, double[] crownHeightMm, double[] heightMm, double[] travelMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
     *
     * dof from 0.5; INFINITY gives that of the normal.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double coverageFactor(double probability, double dof) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_coverage_factor(probability, dof, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_coverage_factor(double probability, double dof, double[] out, Records.Error error);
}
