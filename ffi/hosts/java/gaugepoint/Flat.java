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
     * Length in mm from inches, -400 in to 400 in.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is
     * 61.28004 mm. Source: NIST SP 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double inchToMm(double lengthInch) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_inch_to_mm(lengthInch, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_inch_to_mm(double lengthInch, double[] out, Records.Error error);

    /**
     * inchToMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] inchToMm(double[] lengthInch) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthInch)];
        Gaugepoint.check(gaugepoint_inch_to_mm_array(lengthInch, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** inchToMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] inchToMm(double[] lengthInch, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthInch)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_inch_to_mm_array(lengthInch, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_inch_to_mm_array(double[] lengthInch, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Length in inches from mm, -10160 mm to 10160 mm.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
     * 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double mmToInch(double lengthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_mm_to_inch(lengthMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_mm_to_inch(double lengthMm, double[] out, Records.Error error);

    /**
     * mmToInch of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] mmToInch(double[] lengthMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthMm)];
        Gaugepoint.check(gaugepoint_mm_to_inch_array(lengthMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** mmToInch of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] mmToInch(double[] lengthMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_mm_to_inch_array(lengthMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_mm_to_inch_array(double[] lengthMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
     * 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double thouToMm(double lengthThou) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_thou_to_mm(lengthThou, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_thou_to_mm(double lengthThou, double[] out, Records.Error error);

    /**
     * thouToMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] thouToMm(double[] lengthThou) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthThou)];
        Gaugepoint.check(gaugepoint_thou_to_mm_array(lengthThou, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** thouToMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] thouToMm(double[] lengthThou, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(lengthThou)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_thou_to_mm_array(lengthThou, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_thou_to_mm_array(double[] lengthThou, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of
     * temperatures is another thing.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C.
     * Source: NIST SP 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double fahrenheitToC(double temperatureFahrenheit) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_fahrenheit_to_c(temperatureFahrenheit, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_fahrenheit_to_c(double temperatureFahrenheit, double[] out, Records.Error error);

    /**
     * fahrenheitToC of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] fahrenheitToC(double[] temperatureFahrenheit) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(temperatureFahrenheit)];
        Gaugepoint.check(gaugepoint_fahrenheit_to_c_array(temperatureFahrenheit, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** fahrenheitToC of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] fahrenheitToC(double[] temperatureFahrenheit, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(temperatureFahrenheit)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_fahrenheit_to_c_array(temperatureFahrenheit, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_fahrenheit_to_c_array(double[] temperatureFahrenheit, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of
     * temperatures is another thing.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
     * 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double cToFahrenheit(double temperatureC) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_c_to_fahrenheit(temperatureC, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_c_to_fahrenheit(double temperatureC, double[] out, Records.Error error);

    /**
     * cToFahrenheit of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] cToFahrenheit(double[] temperatureC) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(temperatureC)];
        Gaugepoint.check(gaugepoint_c_to_fahrenheit_array(temperatureC, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** cToFahrenheit of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] cToFahrenheit(double[] temperatureC, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(temperatureC)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_c_to_fahrenheit_array(temperatureC, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_c_to_fahrenheit_array(double[] temperatureC, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree
     * Fahrenheit: 1.8 times as much.
     *
     * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
     * 811 (2008), appendix B.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double perFahrenheitToPerK(double expansionPerFahrenheit) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_per_fahrenheit_to_per_k(expansionPerFahrenheit, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_per_fahrenheit_to_per_k(double expansionPerFahrenheit, double[] out, Records.Error error);

    /**
     * perFahrenheitToPerK of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] perFahrenheitToPerK(double[] expansionPerFahrenheit) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(expansionPerFahrenheit)];
        Gaugepoint.check(gaugepoint_per_fahrenheit_to_per_k_array(expansionPerFahrenheit, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** perFahrenheitToPerK of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] perFahrenheitToPerK(double[] expansionPerFahrenheit, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(expansionPerFahrenheit)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_per_fahrenheit_to_per_k_array(expansionPerFahrenheit, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_per_fahrenheit_to_per_k_array(double[] expansionPerFahrenheit, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below
     * zero the ends butt.
     *
     * gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot
     * circumference of the bore less the hot length of the ring.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double ringHotGapMm(double gapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_ring_hot_gap_mm(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_ring_hot_gap_mm(double gapMm, double boreMm, double boreTemperatureC, double boreExpansionPerK, double ringTemperatureC, double ringExpansionPerK, double[] out, Records.Error error);

    /**
     * ringHotGapMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] ringHotGapMm(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
        Gaugepoint.check(gaugepoint_ring_hot_gap_mm_array(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** ringHotGapMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] ringHotGapMm(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_ring_hot_gap_mm_array(gapMm, boreMm, boreTemperatureC, boreExpansionPerK, ringTemperatureC, ringExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_ring_hot_gap_mm_array(double[] gapMm, double[] boreMm, double[] boreTemperatureC, double[] boreExpansionPerK, double[] ringTemperatureC, double[] ringExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is
     * interference.
     *
     * Refused when it is not between -0.15 mm and 0.2 mm: another pin.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pinColdClearanceMm(double holeMm, double pinMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_pin_cold_clearance_mm(holeMm, pinMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_pin_cold_clearance_mm(double holeMm, double pinMm, double[] out, Records.Error error);

    /**
     * pinColdClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pinColdClearanceMm(double[] holeMm, double[] pinMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(holeMm, pinMm)];
        Gaugepoint.check(gaugepoint_pin_cold_clearance_mm_array(holeMm, pinMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pinColdClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pinColdClearanceMm(double[] holeMm, double[] pinMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(holeMm, pinMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_pin_cold_clearance_mm_array(holeMm, pinMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_pin_cold_clearance_mm_array(double[] holeMm, double[] pinMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20
     * C.
     *
     * hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A
     * pressed bush grows by the coefficient of what holds it. Source: definition of strain.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pinHotClearanceMm(double holeMm, double holeTemperatureC, double holeExpansionPerK, double pinMm, double pinTemperatureC, double pinExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_pin_hot_clearance_mm(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_pin_hot_clearance_mm(double holeMm, double holeTemperatureC, double holeExpansionPerK, double pinMm, double pinTemperatureC, double pinExpansionPerK, double[] out, Records.Error error);

    /**
     * pinHotClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pinHotClearanceMm(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK)];
        Gaugepoint.check(gaugepoint_pin_hot_clearance_mm_array(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pinHotClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pinHotClearanceMm(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_pin_hot_clearance_mm_array(holeMm, holeTemperatureC, holeExpansionPerK, pinMm, pinTemperatureC, pinExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_pin_hot_clearance_mm_array(double[] holeMm, double[] holeTemperatureC, double[] holeExpansionPerK, double[] pinMm, double[] pinTemperatureC, double[] pinExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the
     * interference.
     *
     * Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free
     * ends.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pressFitPressureMpa(double pinMm, double pinHoleMm, double eyeMm, double interferenceMm, double smoothingMm, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_press_fit_pressure_mpa(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_press_fit_pressure_mpa(double pinMm, double pinHoleMm, double eyeMm, double interferenceMm, double smoothingMm, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, double[] out, Records.Error error);

    /**
     * pressFitPressureMpa of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pressFitPressureMpa(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.check(gaugepoint_press_fit_pressure_mpa_array(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pressFitPressureMpa of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pressFitPressureMpa(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_press_fit_pressure_mpa_array(pinMm, pinHoleMm, eyeMm, interferenceMm, smoothingMm, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_press_fit_pressure_mpa_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] interferenceMm, double[] smoothingMm, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
     *
     * The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pressFitForceN(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_press_fit_force_n(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_press_fit_force_n(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, double[] out, Records.Error error);

    /**
     * pressFitForceN of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pressFitForceN(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.check(gaugepoint_press_fit_force_n_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pressFitForceN of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pressFitForceN(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_press_fit_force_n_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_press_fit_force_n_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Torque in N m at which a pin pressed into an eye slips: force pin / 2.
     *
     * The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pressFitTorqueNm(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_press_fit_torque_nm(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_press_fit_torque_nm(double pinMm, double pinHoleMm, double eyeMm, double widthMm, double interferenceMm, double smoothingMm, double friction, double pinModulusMpa, double pinPoisson, double eyeModulusMpa, double eyePoisson, double[] out, Records.Error error);

    /**
     * pressFitTorqueNm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pressFitTorqueNm(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.check(gaugepoint_press_fit_torque_nm_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pressFitTorqueNm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pressFitTorqueNm(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_press_fit_torque_nm_array(pinMm, pinHoleMm, eyeMm, widthMm, interferenceMm, smoothingMm, friction, pinModulusMpa, pinPoisson, eyeModulusMpa, eyePoisson, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_press_fit_torque_nm_array(double[] pinMm, double[] pinHoleMm, double[] eyeMm, double[] widthMm, double[] interferenceMm, double[] smoothingMm, double[] friction, double[] pinModulusMpa, double[] pinPoisson, double[] eyeModulusMpa, double[] eyePoisson, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole
     * opens by the interference and a clearance: 20 + (interference + clearance) / (a diameter).
     *
     * Clean steel colours from 249 C: too much heat. Source: free growth.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double assemblyTemperatureC(double diameterMm, double interferenceMm, double clearanceMm, double expansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_assembly_temperature_c(diameterMm, interferenceMm, clearanceMm, expansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_assembly_temperature_c(double diameterMm, double interferenceMm, double clearanceMm, double expansionPerK, double[] out, Records.Error error);

    /**
     * assemblyTemperatureC of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] assemblyTemperatureC(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(diameterMm, interferenceMm, clearanceMm, expansionPerK)];
        Gaugepoint.check(gaugepoint_assembly_temperature_c_array(diameterMm, interferenceMm, clearanceMm, expansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** assemblyTemperatureC of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] assemblyTemperatureC(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(diameterMm, interferenceMm, clearanceMm, expansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_assembly_temperature_c_array(diameterMm, interferenceMm, clearanceMm, expansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_assembly_temperature_c_array(double[] diameterMm, double[] interferenceMm, double[] clearanceMm, double[] expansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression
     * height); negative when the crown stands above the deck.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pistonDeckClearanceMm(double blockHeightMm, double strokeMm, double rodMm, double compressionHeightMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_piston_deck_clearance_mm(blockHeightMm, strokeMm, rodMm, compressionHeightMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_piston_deck_clearance_mm(double blockHeightMm, double strokeMm, double rodMm, double compressionHeightMm, double[] out, Records.Error error);

    /**
     * pistonDeckClearanceMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pistonDeckClearanceMm(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(blockHeightMm, strokeMm, rodMm, compressionHeightMm)];
        Gaugepoint.check(gaugepoint_piston_deck_clearance_mm_array(blockHeightMm, strokeMm, rodMm, compressionHeightMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pistonDeckClearanceMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pistonDeckClearanceMm(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(blockHeightMm, strokeMm, rodMm, compressionHeightMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_piston_deck_clearance_mm_array(blockHeightMm, strokeMm, rodMm, compressionHeightMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_piston_deck_clearance_mm_array(double[] blockHeightMm, double[] strokeMm, double[] rodMm, double[] compressionHeightMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double sweptVolumeCm3(double boreMm, double strokeMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_swept_volume_cm3(boreMm, strokeMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_swept_volume_cm3(double boreMm, double strokeMm, double[] out, Records.Error error);

    /**
     * sweptVolumeCm3 of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] sweptVolumeCm3(double[] boreMm, double[] strokeMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, strokeMm)];
        Gaugepoint.check(gaugepoint_swept_volume_cm3_array(boreMm, strokeMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** sweptVolumeCm3 of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] sweptVolumeCm3(double[] boreMm, double[] strokeMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, strokeMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_swept_volume_cm3_array(boreMm, strokeMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_swept_volume_cm3_array(double[] boreMm, double[] strokeMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
     *
     * A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the
     * crevice at the top land out, as is usual. Refused when nothing is left above the piston.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double staticCompressionRatio(double boreMm, double strokeMm, double headCm3, double gasketBoreMm, double gasketMm, double deckClearanceMm, double crownCm3, double creviceCm3) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_static_compression_ratio(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_static_compression_ratio(double boreMm, double strokeMm, double headCm3, double gasketBoreMm, double gasketMm, double deckClearanceMm, double crownCm3, double creviceCm3, double[] out, Records.Error error);

    /**
     * staticCompressionRatio of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] staticCompressionRatio(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3)];
        Gaugepoint.check(gaugepoint_static_compression_ratio_array(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** staticCompressionRatio of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] staticCompressionRatio(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_static_compression_ratio_array(boreMm, strokeMm, headCm3, gasketBoreMm, gasketMm, deckClearanceMm, crownCm3, creviceCm3, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_static_compression_ratio_array(double[] boreMm, double[] strokeMm, double[] headCm3, double[] gasketBoreMm, double[] gasketMm, double[] deckClearanceMm, double[] crownCm3, double[] creviceCm3, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
     *
     * The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major
     * thrust side is positive. Source: slider-crank with an offset pin.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double pistonTravelMm(double crankRadiusMm, double rodMm, double pinOffsetMm, double crankAngleDeg) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_piston_travel_mm(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_piston_travel_mm(double crankRadiusMm, double rodMm, double pinOffsetMm, double crankAngleDeg, double[] out, Records.Error error);

    /**
     * pistonTravelMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] pistonTravelMm(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg)];
        Gaugepoint.check(gaugepoint_piston_travel_mm_array(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** pistonTravelMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] pistonTravelMm(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_piston_travel_mm_array(crankRadiusMm, rodMm, pinOffsetMm, crankAngleDeg, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_piston_travel_mm_array(double[] crankRadiusMm, double[] rodMm, double[] pinOffsetMm, double[] crankAngleDeg, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the
     * bench.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double finishSizeMm(double pistonMm, double clearanceMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_finish_size_mm(pistonMm, clearanceMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_finish_size_mm(double pistonMm, double clearanceMm, double[] out, Records.Error error);

    /**
     * finishSizeMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] finishSizeMm(double[] pistonMm, double[] clearanceMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pistonMm, clearanceMm)];
        Gaugepoint.check(gaugepoint_finish_size_mm_array(pistonMm, clearanceMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** finishSizeMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] finishSizeMm(double[] pistonMm, double[] clearanceMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pistonMm, clearanceMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_finish_size_mm_array(pistonMm, clearanceMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_finish_size_mm_array(double[] pistonMm, double[] clearanceMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench
     * - what is left for the hone.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double boringSizeMm(double pistonMm, double clearanceMm, double honingMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_boring_size_mm(pistonMm, clearanceMm, honingMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_boring_size_mm(double pistonMm, double clearanceMm, double honingMm, double[] out, Records.Error error);

    /**
     * boringSizeMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] boringSizeMm(double[] pistonMm, double[] clearanceMm, double[] honingMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pistonMm, clearanceMm, honingMm)];
        Gaugepoint.check(gaugepoint_boring_size_mm_array(pistonMm, clearanceMm, honingMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** boringSizeMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] boringSizeMm(double[] pistonMm, double[] clearanceMm, double[] honingMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(pistonMm, clearanceMm, honingMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_boring_size_mm_array(pistonMm, clearanceMm, honingMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_boring_size_mm_array(double[] pistonMm, double[] clearanceMm, double[] honingMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive
     * when the bore is larger.
     *
     * (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) +
     * deviation) / (1 + a_block (t_block - 20)): the gauge when it was set, and when it is used.
     * Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double boreSizeAt20Mm(double deviationMm, double settingMm, double ringTemperatureC, double ringExpansionPerK, double setTemperatureC, double setExpansionPerK, double usedTemperatureC, double usedExpansionPerK, double blockTemperatureC, double blockExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_bore_size_at_20_mm(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_bore_size_at_20_mm(double deviationMm, double settingMm, double ringTemperatureC, double ringExpansionPerK, double setTemperatureC, double setExpansionPerK, double usedTemperatureC, double usedExpansionPerK, double blockTemperatureC, double blockExpansionPerK, double[] out, Records.Error error);

    /**
     * boreSizeAt20Mm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] boreSizeAt20Mm(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK)];
        Gaugepoint.check(gaugepoint_bore_size_at_20_mm_array(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** boreSizeAt20Mm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] boreSizeAt20Mm(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_bore_size_at_20_mm_array(deviationMm, settingMm, ringTemperatureC, ringExpansionPerK, setTemperatureC, setExpansionPerK, usedTemperatureC, usedExpansionPerK, blockTemperatureC, blockExpansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_bore_size_at_20_mm_array(double[] deviationMm, double[] settingMm, double[] ringTemperatureC, double[] ringExpansionPerK, double[] setTemperatureC, double[] setExpansionPerK, double[] usedTemperatureC, double[] usedExpansionPerK, double[] blockTemperatureC, double[] blockExpansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
     *
     * Temperatures from -40 C to 450 C. Source: definition of strain.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double sizeAtTemperatureMm(double sizeMm, double temperatureC, double expansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_size_at_temperature_mm(sizeMm, temperatureC, expansionPerK, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_size_at_temperature_mm(double sizeMm, double temperatureC, double expansionPerK, double[] out, Records.Error error);

    /**
     * sizeAtTemperatureMm of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] sizeAtTemperatureMm(double[] sizeMm, double[] temperatureC, double[] expansionPerK) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(sizeMm, temperatureC, expansionPerK)];
        Gaugepoint.check(gaugepoint_size_at_temperature_mm_array(sizeMm, temperatureC, expansionPerK, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** sizeAtTemperatureMm of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] sizeAtTemperatureMm(double[] sizeMm, double[] temperatureC, double[] expansionPerK, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(sizeMm, temperatureC, expansionPerK)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_size_at_temperature_mm_array(sizeMm, temperatureC, expansionPerK, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_size_at_temperature_mm_array(double[] sizeMm, double[] temperatureC, double[] expansionPerK, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

    /**
     * Probability that the true value lies within two limits, for a value with a normal error of a
     * standard uncertainty.
     *
     * A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
     *
     * @throws GaugepointException when a value is refused
     */
    public static double probabilityOfConformity(double valueMm, double standardUncertaintyMm, double lowerMm, double upperMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = {Double.NaN};
        Gaugepoint.check(gaugepoint_probability_of_conformity(valueMm, standardUncertaintyMm, lowerMm, upperMm, out, error), error);
        return out[0];
    }

    private static native int gaugepoint_probability_of_conformity(double valueMm, double standardUncertaintyMm, double lowerMm, double upperMm, double[] out, Records.Error error);

    /**
     * probabilityOfConformity of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] probabilityOfConformity(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(valueMm, standardUncertaintyMm, lowerMm, upperMm)];
        Gaugepoint.check(gaugepoint_probability_of_conformity_array(valueMm, standardUncertaintyMm, lowerMm, upperMm, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** probabilityOfConformity of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] probabilityOfConformity(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(valueMm, standardUncertaintyMm, lowerMm, upperMm)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_probability_of_conformity_array(valueMm, standardUncertaintyMm, lowerMm, upperMm, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_probability_of_conformity_array(double[] valueMm, double[] standardUncertaintyMm, double[] lowerMm, double[] upperMm, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
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

    /**
     * coverageFactor of each row: the first row that is refused refuses the call.
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] coverageFactor(double[] probability, double[] dof) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(probability, dof)];
        Gaugepoint.check(gaugepoint_coverage_factor_array(probability, dof, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }

    /** coverageFactor of each row: 0 or why it is refused, and NaN, for each. rowStatus has a place for each. */
    public static double[] coverageFactor(double[] probability, double[] dof, int[] rowStatus) {
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows(probability, dof)];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_coverage_factor_array(probability, dof, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }

    private static native int gaugepoint_coverage_factor_array(double[] probability, double[] dof, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);
}
