import com.sun.jna.Structure;
import gaugepoint.Codes;
import gaugepoint.Documents;
import gaugepoint.Flat;
import gaugepoint.Gaugepoint;
import gaugepoint.GaugepointException;
import gaugepoint.Records;
import java.io.FileOutputStream;
import java.io.FileDescriptor;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Program WORK OUT: says through the binding what said.c says in C; then misuse. Program check: whether the library can be used. */
public final class Program {
    private static final AtomicInteger CHECKS = new AtomicInteger();
    private static PrintStream out;

    private Program() {
    }

    public static void main(String[] words) throws Exception {
        if (words[0].equals("check")) {
            try {
                Flat.benchClearanceMm(86.1, 86);
            } catch (UnsatisfiedLinkError e) {
                System.err.println(e.getMessage());
                System.exit(3);
            }
            return;
        }
        out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        Path work = Path.of(words[0]);
        sizes();
        flats(work);
        decisions();
        stacks();
        laws();
        for (String name : Files.readAllLines(work.resolve("refused.txt"))) {
            byte[] document = Files.readAllBytes(work.resolve("refused").resolve(name));
            say("refused " + name + " " + told(refused(GaugepointException.class, () -> Documents.jobAssess(document, false))));
        }
        List<String> documents = Files.readAllLines(work.resolve("documents.txt"));
        for (String line : documents) {
            document(line.split(" ", 3), Path.of(words[1]));
        }
        misuse();
        threads(Files.readString(Path.of(documents.get(0).split(" ", 3)[2])));
        say("checks " + CHECKS);
        out.flush();
    }

    private static void say(String line) {
        out.print(line + "\n");
    }

    private static void check(boolean holds, String what) {
        if (!holds) {
            throw new IllegalStateException("does not hold: " + what);
        }
        CHECKS.incrementAndGet();
    }

    private static <T extends Throwable> T refused(Class<T> kind, Runnable call) {
        try {
            call.run();
        } catch (Throwable e) {
            if (kind.isInstance(e)) {
                CHECKS.incrementAndGet();
                return kind.cast(e);
            }
            throw e;
        }
        throw new IllegalStateException("nothing was refused");
    }

    private static GaugepointException refused(int status, Runnable call) {
        GaugepointException e = refused(GaugepointException.class, call);
        check(e.status == status, e.name + ": " + e.getMessage());
        return e;
    }

    private static String bits(double x) {
        return String.format("%016x", Double.doubleToRawLongBits(x));
    }

    private static String bits(Double x) {
        return bits(x == null ? 0.0 : x.doubleValue());
    }

    private static String hex(String text) {
        StringBuilder all = new StringBuilder();
        for (byte b : text.getBytes(StandardCharsets.UTF_8)) {
            all.append(String.format("%02x", b));
        }
        return all.toString();
    }

    private static String told(GaugepointException e) {
        return String.join(" ", e.name, hex(e.field), hex(e.refused), hex(e.didYouMean), bits(e.value), bits(e.lower), bits(e.upper));
    }

    private static void sizes() throws IllegalAccessException {
        Structure[] records = {new Records.Error(), new Records.JobVerdict(), new Records.CylinderVerdict(), new Records.JobDecision(),
            new Records.Contributor(), new Records.Tail(), new Records.Law(), new Records.Growth()};
        for (Structure record : records) {
            say("size " + record.getClass().getSimpleName() + " " + record.size());
        }
        say("version " + Gaugepoint.version() + " abi " + Codes.ABI);
        for (Field status : Codes.Status.class.getFields()) {
            int number = status.getInt(null);
            say("status " + number + " " + Gaugepoint.nameOf(number) + " " + Gaugepoint.textOf(number));
        }
        check(Gaugepoint.nameOf(999).equals("unknown"), "a status of a later library");
    }

    /** The function of a name of the header, by its parameters. */
    private static Method function(String name, List<Class<?>> parameters) throws NoSuchMethodException {
        StringBuilder camel = new StringBuilder();
        for (String word : name.split("_")) {
            camel.append(camel.length() == 0 ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1));
        }
        return Flat.class.getMethod(camel.toString(), parameters.toArray(new Class<?>[0]));
    }

    private static Object call(Method function, List<Object> arguments) {
        try {
            return function.invoke(null, arguments.toArray());
        } catch (InvocationTargetException e) {
            throw (RuntimeException) e.getCause();
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    private static double number(String text) {
        switch (text) {
            case "nan":
                return Double.NaN;
            case "inf":
                return Double.POSITIVE_INFINITY;
            case "-inf":
                return Double.NEGATIVE_INFINITY;
            default:
                return Double.parseDouble(text);
        }
    }

    private static boolean all(double[] values, double one) {
        return values.length == 3 && Arrays.stream(values).allMatch(value -> bits(value).equals(bits(one)));
    }

    private static void flats(Path work) throws IOException, NoSuchMethodException {
        boolean names = true;
        for (String line : Files.readAllLines(work.resolve("flat.csv"))) {
            if (line.startsWith("#")) {
                continue;
            }
            if (!names) {
                flat(line.split(",", 6));
            }
            names = false;
        }
    }

    private static void flat(String[] cells) throws NoSuchMethodException {
        List<Object> x = new ArrayList<>();
        List<Object> columns = new ArrayList<>();
        List<Class<?>> numbers = new ArrayList<>();
        List<Class<?>> arrays = new ArrayList<>();
        for (String text : cells[2].split(";")) {
            double value = number(text);
            x.add(value);
            columns.add(new double[] {value, value, value});
            numbers.add(double.class);
            arrays.add(double[].class);
        }
        Method rows = function(cells[1], arrays);
        int[] statuses = new int[3];
        List<Object> withStatus = new ArrayList<>(columns);
        withStatus.add(statuses);
        arrays.add(int[].class);
        double[] judged = (double[]) call(function(cells[1], arrays), withStatus);
        try {
            double result = (double) call(function(cells[1], numbers), x);
            say("flat " + cells[0] + " " + bits(result));
            check(all((double[]) call(rows, columns), result), "rows");
            check(all(judged, result) && Arrays.equals(statuses, new int[3]), "rows with status");
        } catch (GaugepointException e) {
            say("flat " + cells[0] + " " + told(e));
            check(Arrays.stream(judged).allMatch(Double::isNaN) && Arrays.stream(statuses).allMatch(s -> s == e.status), "refused rows with status");
            check(refused(e.status, () -> call(rows, columns)).field.equals(e.field + "/0"), "the place of a row");
        }
    }

    private static void decide(int rule, Double lower, Double upper, double u, double atLeast) {
        try {
            Gaugepoint.Decided decided = Gaugepoint.decideMm(10, u, lower, upper, rule, atLeast);
            say("decide " + decided.conformity + " " + bits(decided.probability));
        } catch (GaugepointException e) {
            say("decide " + told(e));
        }
    }

    private static void decisions() {
        decide(Codes.Rule.PROVEN, null, 10.5, 0.25, 0.95);
        decide(Codes.Rule.SIMPLE_ACCEPTANCE, 9.5, 10.5, 0.25, 0.95);
        decide(Codes.Rule.CONFORMANCE_PROBABILITY, 9.5, null, 0.25, 0.9);
        decide(Codes.Rule.PROVEN, 9.5, 10.5, -1, 0.95);
        decide(Codes.Rule.PROVEN, null, null, 0.25, 0.95);
    }

    private static void stacks() {
        double[] normal = {0.01, 0.02};
        double[] even = {0, 0.05};
        int rectangular = Codes.Variation.RECTANGULAR;
        try (Gaugepoint.Stack stack = new Gaugepoint.Stack()) {
            stack.add("Deckh\u00f6he \ud83d\ude00", 220, -0.05, 0.05, Codes.Variation.NORMAL, normal);
            stack.add("pin", 30, -0.05, 0.05, rectangular, even, -1, 1);
            stack.add("rod", 150, -0.1, 0.1, rectangular, even, -1, 2);
            say("stack " + told(refused(Codes.Status.REPEATED, () -> stack.add("pin", 30, -0.05, 0.05, rectangular, even, -1, 1))));
            Records.Tail tail = stack.outside(-110.1, -109.9);
            say(String.join(" ", "stack", bits(stack.quantile(0.025)), bits(tail.below), bits(tail.above), bits(tail.error), bits(tail.ppm)));
            say("stack " + told(refused(GaugepointException.class, () -> stack.quantile(1.5))));
            refused(NullPointerException.class, () -> stack.add(null, 1, 0, 0, rectangular, even));
            refused(NullPointerException.class, () -> stack.add("x", 1, 0, 0, rectangular, null));
            refused(GaugepointException.class, () -> stack.add("x", 1, -1, 1, rectangular, new double[0]));
            refused(GaugepointException.class, () -> stack.add("x", 1, -1, 1, rectangular, even, 1, -1));
            refused(GaugepointException.class, () -> stack.add("x", 1, -1, 1, 99, even));
            refused(Codes.Status.CONTROL_CHARACTER, () -> stack.add("a\0b", 1, -1, 1, rectangular, even));
        }
    }

    private static void law(Supplier<Gaugepoint.Expansion> make, double temperatureC) {
        try (Gaugepoint.Expansion law = make.get()) {
            Records.Growth growth = law.at(temperatureC);
            double[] strains = law.strains(new double[] {temperatureC, 20});
            double[] rangeC = law.rangeC();
            say(String.join(" ", "law", bits(rangeC[0]), bits(rangeC[1]), bits(growth.strain), bits(growth.instantaneousPerK), bits(growth.meanFrom20PerK), bits(strains[0]),
                bits(strains[1]), bits(law.meanPerK(30, temperatureC))));
        } catch (GaugepointException e) {
            say("law " + told(e));
        }
    }

    private static void laws() {
        double[] temperaturesC = {0, 100, 200, 300};
        double[] line = {18e-6, 5e-9};
        double[] strain = {-5e-3, 15e-6, 5e-9};
        double[] coefficients = {20e-6, 20.5e-6, 21e-6, 22e-6};
        law(() -> Gaugepoint.Expansion.mean(20, 20e-6, -40, 300), 120);
        law(() -> Gaugepoint.Expansion.meanTable(20, temperaturesC, coefficients), 120);
        law(() -> Gaugepoint.Expansion.instantaneousTable(temperaturesC, coefficients), 120);
        law(() -> Gaugepoint.Expansion.polynomial(Codes.LawForm.INSTANTANEOUS_POLYNOMIAL, line, 0, 300), 120);
        law(() -> Gaugepoint.Expansion.polynomial(Codes.LawForm.STRAIN_POLYNOMIAL, strain, 0, 300), 120);
        law(() -> Gaugepoint.Expansion.graphiteIron(66.4, 9.05, 0.5), 120);
        law(() -> Gaugepoint.Expansion.builtIn("gravity-cast AlSi12CuMgNi"), 120);
        law(() -> Gaugepoint.Expansion.mean(20, 20e-6, -40, 300), 301);
        law(() -> Gaugepoint.Expansion.builtIn("gravity"), 120);
        refused(IllegalArgumentException.class, () -> Gaugepoint.Expansion.meanTable(20, temperaturesC, new double[3]));
        refused(NullPointerException.class, () -> Gaugepoint.Expansion.builtIn(null));
    }

    private static String evaluated(int kind, String document) {
        switch (kind) {
            case Codes.Document.JOB:
                return Documents.jobAssess(document, false);
            case Codes.Document.SHEET:
                return Documents.sheetCheck(document);
            case Codes.Document.MEASUREMENT:
                return Documents.measure(document, false);
            case Codes.Document.FIT:
                return Documents.fit(document, false);
            case Codes.Document.STACK:
                return Documents.stackEvaluate(document, false);
            case Codes.Document.BUDGET:
                return Documents.budgetEvaluate(document);
            case Codes.Document.REVISIT:
                return Documents.revisit(document);
            default:
                return Documents.whatIf(document);
        }
    }

    private static void document(String[] words, Path folder) throws IOException {
        int kind = Integer.parseInt(words[0]);
        String document = Files.readString(Path.of(words[2]));
        String text = evaluated(kind, document);
        Files.writeString(folder.resolve(words[1]), text);
        say("document " + kind + " " + words[1]);
        try (Gaugepoint.Report report = new Gaugepoint.Report(kind, document)) {
            check(report.written(Codes.Format.JSON).equals(text), "the report as a handle");
            if (kind == Codes.Document.JOB) {
                job(report);
            } else {
                refused(Codes.Status.UNKNOWN_FORMAT, report::job);
            }
        }
    }

    private static void job(Gaugepoint.Report report) {
        Records.JobVerdict verdict = report.job();
        say("job " + verdict.outcome + " " + verdict.cylinderCount + " " + verdict.reuseCount + " " + verdict.doNotReuseCount);
        for (int k = 0; k < verdict.cylinderCount.intValue(); k++) {
            Records.CylinderVerdict c = report.cylinder(k);
            say(String.format("cylinder %d %d %d %d %d", c.number, c.outcome, c.pistonOutcome, c.boreOutcome, c.decidedBy));
            for (int j = 0; j < c.decisionCount.intValue(); j++) {
                Records.JobDecision d = report.decision(k, j);
                say(String.join(" ", "decision", "" + d.judged, "" + d.result, bits(d.hasValue != 0 ? d.valueMm : 0),
                    bits(d.hasLower != 0 ? d.lowerMm : 0), bits(d.hasProbability != 0 ? d.probabilityOfConformity : 0)));
            }
        }
        for (int lines = Codes.Lines.CAUTIONS; lines <= Codes.Lines.CYLINDER_DECISIONS; lines++) {
            for (String line : report.sentences(lines, 0)) {
                say("line " + lines + " " + line);
            }
        }
        refused(Codes.Status.OUT_OF_RANGE, () -> report.cylinder(-1));
        refused(Codes.Status.OUT_OF_RANGE, () -> report.sentences(Codes.Lines.CYLINDER_REASONS, 99));
        refused(Codes.Status.UNKNOWN_CHOICE, () -> report.written(99));
    }

    private static void misuse() {
        refused(NullPointerException.class, () -> Documents.jobAssess((String) null, false));
        refused(NullPointerException.class, () -> Documents.jobAssess((byte[]) null, false));
        refused(IllegalArgumentException.class, () -> Documents.jobAssess("\ud800", false));
        refused(Codes.Status.SYNTAX, () -> Documents.jobAssess("", false));
        refused(Codes.Status.NOT_UTF8, () -> Documents.jobAssess(new byte[] {-1}, false));
        refused(Codes.Status.SYNTAX, () -> Documents.jobAssess("{\0}", false));
        String name = "H\u00f6he \ud83d\ude00";
        GaugepointException unknown = refused(GaugepointException.class, () -> Documents.measure("{\"" + name + "\": 1}", false));
        check((unknown.field + unknown.refused + unknown.getMessage()).contains(name), "text beyond ASCII");
        check(unknown.value == null && unknown.lower == null && unknown.upper == null, "no numbers");
        refused(NullPointerException.class, () -> Flat.benchClearanceMm(null, new double[1]));
        refused(NullPointerException.class, () -> Flat.benchClearanceMm(new double[1], null));
        refused(NullPointerException.class, () -> Flat.benchClearanceMm(new double[1], new double[1], null));
        refused(IllegalArgumentException.class, () -> Flat.benchClearanceMm(new double[2], new double[1]));
        refused(IllegalArgumentException.class, () -> Flat.benchClearanceMm(new double[2], new double[2], new int[1]));
        check(Flat.benchClearanceMm(new double[0], new double[0]).length == 0, "no rows");
        check(Flat.benchClearanceMm(new double[0], new double[0], new int[0]).length == 0, "no rows with status");
        Gaugepoint.Stack stack = new Gaugepoint.Stack();
        stack.close();
        stack.close();
        refused(IllegalStateException.class, () -> stack.quantile(0.5));
        Gaugepoint.Expansion law = Gaugepoint.Expansion.mean(20, 20e-6, -40, 300);
        check(law.strains(new double[0]).length == 0, "no temperatures");
        law.close();
        refused(IllegalStateException.class, () -> law.at(20));
        refused(NullPointerException.class, () -> new Gaugepoint.Report(Codes.Document.JOB, null));
        refused(GaugepointException.class, () -> new Gaugepoint.Report(99, "{}"));
    }

    private static void threads(String document) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(8);
        try (Gaugepoint.Report report = new Gaugepoint.Report(Codes.Document.JOB, document); Gaugepoint.Stack stack = new Gaugepoint.Stack()) {
            stack.add("a", 1, -1, 1, Codes.Variation.RECTANGULAR, new double[] {0, 1});
            String wanted = report.written(Codes.Format.TEXT);
            double quantile = stack.quantile(0.25);
            List<Future<?>> running = new ArrayList<>();
            for (int k = 0; k < 8; k++) {
                int number = k;
                running.add(pool.submit(() -> {
                    stack.add("of " + number, 0, 0, 0, Codes.Variation.RECTANGULAR, new double[] {0, 0});
                    for (int again = 0; again < 5; again++) {
                        check(report.written(Codes.Format.TEXT).equals(wanted), "a report shared by threads");
                        check(stack.quantile(0.25) == quantile, "a stack shared by threads");
                        check(bits(Flat.benchClearanceMm(86.1, 86)).equals(bits(86.1 - 86)), "a clearance in a thread");
                        GaugepointException e = refused(GaugepointException.class, () -> Flat.benchClearanceMm(number - 10, 86));
                        check(e.value == number - 10, "errors are not mixed up");
                    }
                    check(Documents.jobAssess(document, false).length() > 1000, "a job in a thread");
                }));
            }
            for (Future<?> one : running) {
                one.get();
            }
        } finally {
            pool.shutdown();
        }
    }
}
