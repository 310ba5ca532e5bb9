// Program WORK OUT: says through the binding what said.c says in C; then misuse. Program check: whether the library can be used.
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Text;
using System.Threading;
using Gaugepoint;

internal static class Program
{
    private static readonly UTF8Encoding Utf8 = new UTF8Encoding(false, true);
    private static readonly TextWriter Out = new StreamWriter(Console.OpenStandardOutput(), Utf8) { NewLine = "\n" };
    private static int checks;

    private static int Main(string[] words)
    {
        if (words[0] == "check")
        {
            try
            {
                Flat.BenchClearanceMm(86.1, 86);
                return 0;
            }
            catch (DllNotFoundException e)
            {
                Console.Error.WriteLine(e.Message);
                return 3;
            }
        }
        Sizes();
        Flats(words[0]);
        Decisions();
        Stacks();
        Laws();
        foreach (var name in Lines(Path.Combine(words[0], "refused.txt")))
        {
            var refused = Refused<GaugepointException>(() => Documents.JobAssess(File.ReadAllBytes(Path.Combine(words[0], "refused", name))));
            Out.WriteLine($"refused {name} {Told(refused)}");
        }
        foreach (var line in Lines(Path.Combine(words[0], "documents.txt")))
        {
            OneDocument(line.Split(new[] { ' ' }, 3), words[1]);
        }
        Misuse();
        Threads(Lines(Path.Combine(words[0], "documents.txt")).First().Split(new[] { ' ' }, 3)[2]);
        Out.WriteLine($"checks {checks}");
        Out.Flush();
        return 0;
    }

    private static IEnumerable<string> Lines(string path) => File.ReadAllLines(path, Utf8);

    private static void Check(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException("does not hold: " + what);
        }
        Interlocked.Increment(ref checks);
    }

    private static T Refused<T>(Action call) where T : Exception
    {
        try
        {
            call();
        }
        catch (T e)
        {
            Interlocked.Increment(ref checks);
            return e;
        }
        throw new InvalidOperationException("nothing was refused");
    }

    private static string Bits(double x) => BitConverter.DoubleToInt64Bits(x).ToString("x16", CultureInfo.InvariantCulture);

    private static string Hex(string text) => string.Concat(Utf8.GetBytes(text).Select(b => b.ToString("x2", CultureInfo.InvariantCulture)));

    private static string Told(GaugepointException e) =>
        $"{e.Name} {Hex(e.Field)} {Hex(e.Refused)} {Hex(e.DidYouMean)} {Bits(e.Value ?? 0)} {Bits(e.Lower ?? 0)} {Bits(e.Upper ?? 0)}";

    private static void Sizes()
    {
        foreach (var type in new[] { typeof(Error), typeof(JobVerdict), typeof(CylinderVerdict), typeof(JobDecision), typeof(Contributor), typeof(Tail), typeof(Law), typeof(Growth) })
        {
            Out.WriteLine($"size {type.Name} {Marshal.SizeOf(type)}");
        }
        Out.WriteLine($"version {Library.Version} abi {Library.Abi}");
        foreach (Status status in Enum.GetValues(typeof(Status)))
        {
            Out.WriteLine($"status {(int)status} {Library.NameOf(status)} {Library.TextOf(status)}");
        }
        Check(Library.NameOf((Status)999) == "unknown", "a status of a later library");
    }

    /// <summary>The function of a name of the header, by its parameters.</summary>
    private static MethodInfo Function(string name, params Type[] parameters)
    {
        var words = name.Split('_').Select(w => char.ToUpperInvariant(w[0]) + w.Substring(1));
        return typeof(Flat).GetMethod(string.Concat(words), parameters);
    }

    private static object Call(MethodInfo function, params object[] arguments)
    {
        try
        {
            return function.Invoke(null, arguments);
        }
        catch (TargetInvocationException e)
        {
            throw e.InnerException;
        }
    }

    private static double Number(string text)
    {
        switch (text)
        {
            case "nan": return double.NaN;
            case "inf": return double.PositiveInfinity;
            case "-inf": return double.NegativeInfinity;
            default: return double.Parse(text, CultureInfo.InvariantCulture);
        }
    }

    private static void Flats(string work)
    {
        var rows = Lines(Path.Combine(work, "flat.csv")).Where(line => !line.StartsWith("#", StringComparison.Ordinal)).Skip(1);
        foreach (var cells in rows.Select(line => line.Split(',')))
        {
            var x = cells[2].Split(';').Select(Number).ToArray();
            var columns = x.Select(value => (object)new[] { value, value, value }).ToArray();
            var array = Enumerable.Repeat(typeof(double[]), x.Length).ToArray();
            var scalar = Function(cells[1], Enumerable.Repeat(typeof(double), x.Length).ToArray());
            var rowsOf = Function(cells[1], array);
            var withStatus = Function(cells[1], array.Append(typeof(Status[]).MakeByRefType()).ToArray());
            var arguments = columns.Append(null).ToArray();
            var judged = (double[])withStatus.Invoke(null, arguments);
            var statuses = (Status[])arguments.Last();
            try
            {
                var result = (double)Call(scalar, x.Cast<object>().ToArray());
                Out.WriteLine($"flat {cells[0]} {Bits(result)}");
                Check(((double[])Call(rowsOf, columns)).All(r => Bits(r) == Bits(result)), "rows");
                Check(judged.Length == 3 && judged.All(r => Bits(r) == Bits(result)) && statuses.All(s => s == Status.Ok), "rows with status");
            }
            catch (GaugepointException e)
            {
                Out.WriteLine($"flat {cells[0]} {Told(e)}");
                Check(judged.Length == 3 && judged.All(double.IsNaN) && statuses.All(s => s == e.Status), "refused rows with status");
                Check(Refused<GaugepointException>(() => Call(rowsOf, columns)).Field == e.Field + "/0", "the place of a row");
            }
        }
    }

    private static void Decide(Rule rule, double? lower, double? upper, double u, double atLeast)
    {
        try
        {
            var result = Decision.DecideMm(10, u, lower, upper, rule, atLeast, out double probability);
            Out.WriteLine($"decide {(int)result} {Bits(probability)}");
        }
        catch (GaugepointException e)
        {
            Out.WriteLine($"decide {Told(e)}");
        }
    }

    private static void Decisions()
    {
        Decide(Rule.Proven, null, 10.5, 0.25, 0.95);
        Decide(Rule.SimpleAcceptance, 9.5, 10.5, 0.25, 0.95);
        Decide(Rule.ConformanceProbability, 9.5, null, 0.25, 0.9);
        Decide(Rule.Proven, 9.5, 10.5, -1, 0.95);
        Decide(Rule.Proven, null, null, 0.25, 0.95);
    }

    private static void Stacks()
    {
        double[] normal = { 0.01, 0.02 }, even = { 0, 0.05 };
        using (var stack = new Stack())
        {
            stack.Add("Deckhöhe 😀", 220, -0.05, 0.05, Variation.Normal, normal);
            stack.Add("pin", 30, -0.05, 0.05, Variation.Rectangular, even, -1);
            stack.Add("rod", 150, -0.1, 0.1, Variation.Rectangular, even, -1, 2);
            var twice = Refused<GaugepointException>(() => stack.Add("pin", 30, -0.05, 0.05, Variation.Rectangular, even, -1));
            Out.WriteLine($"stack {Told(twice)}");
            var tail = stack.Outside(-110.1, -109.9);
            Out.WriteLine($"stack {Bits(stack.Quantile(0.025))} {Bits(tail.Below)} {Bits(tail.Above)} {Bits(tail.Error)} {Bits(tail.Ppm)}");
            Out.WriteLine($"stack {Told(Refused<GaugepointException>(() => stack.Quantile(1.5)))}");
            Refused<ArgumentNullException>(() => stack.Add(null, 1, 0, 0, Variation.Normal, normal));
            Refused<ArgumentNullException>(() => stack.Add("x", 1, 0, 0, Variation.Normal, null));
            Refused<GaugepointException>(() => stack.Add("x", 1, -1, 1, Variation.Normal, new double[0]));
            Refused<GaugepointException>(() => stack.Add("x", 1, -1, 1, Variation.Normal, normal, 1, -1));
            Refused<GaugepointException>(() => stack.Add("x", 1, -1, 1, (Variation)99, normal));
            var name = Refused<GaugepointException>(() => stack.Add("a\0b", 1, -1, 1, Variation.Normal, normal));
            Check(name.Status == Status.ControlCharacter, "a NUL in a name");
        }
    }

    private static void OneLaw(Func<Expansion> make, double temperatureC)
    {
        try
        {
            using (var law = make())
            {
                var growth = law.At(temperatureC);
                var strains = law.Strains(new[] { temperatureC, 20.0 });
                law.Range(out double fromC, out double toC);
                Out.WriteLine($"law {Bits(fromC)} {Bits(toC)} {Bits(growth.Strain)} {Bits(growth.InstantaneousPerK)} {Bits(growth.MeanFrom20PerK)} {Bits(strains[0])} {Bits(strains[1])} {Bits(law.MeanPerK(30, temperatureC))}");
            }
        }
        catch (GaugepointException e)
        {
            Out.WriteLine($"law {Told(e)}");
        }
    }

    private static void Laws()
    {
        double[] temperaturesC = { 0, 100, 200, 300 }, coefficients = { 20e-6, 20.5e-6, 21e-6, 22e-6 }, line = { 18e-6, 5e-9 }, strain = { -5e-3, 15e-6, 5e-9 };
        OneLaw(() => Expansion.Mean(20, 20e-6, -40, 300), 120);
        OneLaw(() => Expansion.MeanTable(20, temperaturesC, coefficients), 120);
        OneLaw(() => Expansion.InstantaneousTable(temperaturesC, coefficients), 120);
        OneLaw(() => Expansion.Polynomial(LawForm.InstantaneousPolynomial, line, 0, 300), 120);
        OneLaw(() => Expansion.Polynomial(LawForm.StrainPolynomial, strain, 0, 300), 120);
        OneLaw(() => Expansion.GraphiteIron(66.4, 9.05, 0.5), 120);
        OneLaw(() => Expansion.BuiltIn("gravity-cast AlSi12CuMgNi"), 120);
        OneLaw(() => Expansion.Mean(20, 20e-6, -40, 300), 301);
        OneLaw(() => Expansion.BuiltIn("gravity"), 120);
        Refused<ArgumentException>(() => Expansion.MeanTable(20, temperaturesC, new double[3]));
        Refused<ArgumentNullException>(() => Expansion.BuiltIn(null));
    }

    private static string Evaluated(Document kind, string document)
    {
        switch (kind)
        {
            case Document.Job: return Documents.JobAssess(document);
            case Document.Sheet: return Documents.SheetCheck(document);
            case Document.Measurement: return Documents.Measure(document);
            case Document.Fit: return Documents.Fit(document);
            case Document.Stack: return Documents.StackEvaluate(document);
            case Document.Budget: return Documents.BudgetEvaluate(document);
            case Document.Revisit: return Documents.Revisit(document);
            default: return Documents.WhatIf(document);
        }
    }

    private static void OneDocument(string[] words, string folder)
    {
        var kind = (Document)int.Parse(words[0], CultureInfo.InvariantCulture);
        var document = File.ReadAllText(words[2], Utf8);
        var text = Evaluated(kind, document);
        File.WriteAllText(Path.Combine(folder, words[1]), text, Utf8);
        Out.WriteLine($"document {(int)kind} {words[1]}");
        using (var report = new Report(kind, document))
        {
            Check(report.Written(Format.Json) == text, "the report as a handle");
            if (kind == Document.Job)
            {
                Job(report);
            }
            else
            {
                Check(Refused<GaugepointException>(() => report.Job()).Status == Status.UnknownFormat, "no job");
            }
        }
    }

    private static void Job(Report report)
    {
        var verdict = report.Job();
        Out.WriteLine($"job {(int)verdict.Outcome} {verdict.CylinderCount} {verdict.ReuseCount} {verdict.DoNotReuseCount}");
        for (var k = 0; k < verdict.CylinderCount; k++)
        {
            var c = report.Cylinder(k);
            Out.WriteLine($"cylinder {c.Number} {(int)c.Outcome} {(int)c.PistonOutcome} {(int)c.BoreOutcome} {(int)c.DecidedBy}");
            for (var j = 0; j < c.DecisionCount; j++)
            {
                var d = report.Decision(k, j);
                Out.WriteLine($"decision {(int)d.Judged} {(int)d.Result} {Bits(d.HasValue != 0 ? d.ValueMm : 0)} {Bits(d.HasLower != 0 ? d.LowerMm : 0)} {Bits(d.HasProbability != 0 ? d.ProbabilityOfConformity : 0)}");
            }
        }
        foreach (Lines lines in Enum.GetValues(typeof(Lines)))
        {
            report.Sentences(lines).ForEach(line => Out.WriteLine($"line {(int)lines} {line}"));
        }
        Check(Refused<GaugepointException>(() => report.Cylinder(-1)).Status == Status.OutOfRange, "no such cylinder");
        Check(Refused<GaugepointException>(() => report.Sentences(Gaugepoint.Lines.CylinderReasons, 99)).Status == Status.OutOfRange, "sentences of no cylinder");
        Check(Refused<GaugepointException>(() => report.Written((Format)99)).Status == Status.UnknownChoice, "no such format");
    }

    private static void Misuse()
    {
        Refused<ArgumentNullException>(() => Documents.JobAssess((string)null));
        Refused<ArgumentNullException>(() => Documents.JobAssess((byte[])null));
        Refused<ArgumentException>(() => Documents.JobAssess("\ud800"));
        Check(Refused<GaugepointException>(() => Documents.JobAssess("")).Status == Status.Syntax, "an empty document");
        Check(Refused<GaugepointException>(() => Documents.JobAssess(new byte[] { 0xff })).Status == Status.NotUtf8, "no UTF-8");
        Check(Refused<GaugepointException>(() => Documents.JobAssess("{\0}")).Status == Status.Syntax, "a NUL in a document");
        var unknown = Refused<GaugepointException>(() => Documents.Measure("{\"Höhe 😀\": 1}"));
        Check((unknown.Field + unknown.Refused + unknown.Message).Contains("Höhe 😀"), "text beyond ASCII: " + unknown.Message);
        Check(unknown.Value == null && unknown.Lower == null && unknown.Upper == null, "no numbers");
        Refused<ArgumentNullException>(() => Flat.BenchClearanceMm(null, new double[1]));
        Refused<ArgumentNullException>(() => Flat.BenchClearanceMm(new double[1], null));
        Refused<ArgumentException>(() => Flat.BenchClearanceMm(new double[2], new double[1]));
        Check(Flat.BenchClearanceMm(new double[0], new double[0]).Length == 0, "no rows");
        Check(Flat.BenchClearanceMm(new double[0], new double[0], out Status[] none).Length == 0 && none.Length == 0, "no rows with status");
        var stack = new Stack();
        stack.Dispose();
        stack.Dispose();
        Refused<ObjectDisposedException>(() => stack.Quantile(0.5));
        var law = Expansion.Mean(20, 20e-6, -40, 300);
        Check(law.Strains(new double[0]).Length == 0, "no temperatures");
        law.Dispose();
        Refused<ObjectDisposedException>(() => law.At(20));
        Refused<ArgumentNullException>(() => new Report(Document.Job, null));
        Refused<GaugepointException>(() => new Report((Document)99, "{}"));
        // objects that are not disposed of are freed by the collector
        for (var k = 0; k < 1000; k++)
        {
            Expansion.Mean(20, 20e-6, -40, 300);
        }
        GC.Collect();
        GC.WaitForPendingFinalizers();
    }

    private static void Threads(string path)
    {
        var document = File.ReadAllText(path, Utf8);
        using (var report = new Report(Document.Job, document))
        using (var stack = new Stack())
        {
            stack.Add("a", 1, -1, 1, Variation.Rectangular, new double[] { 0, 1 });
            string wanted = report.Written(Format.Text), failed = null;
            var quantile = stack.Quantile(0.25);
            var threads = Enumerable.Range(0, 8).Select(number => new Thread(() =>
            {
                try
                {
                    stack.Add($"of {number}", 0, 0, 0, Variation.Rectangular, new double[] { 0, 0 });
                    for (var k = 0; k < 5; k++)
                    {
                        Check(report.Written(Format.Text) == wanted, "a report shared by threads");
                        Check(stack.Quantile(0.25) == quantile, "a stack shared by threads");
                        Check(Bits(Flat.BenchClearanceMm(86.1, 86)) == Bits(86.1 - 86), "a clearance in a thread");
                        Check(Refused<GaugepointException>(() => Flat.BenchClearanceMm(number - 10, 86)).Value == number - 10, "errors are not mixed up");
                    }
                    Check(Documents.JobAssess(document).Length > 1000, "a job in a thread");
                }
                catch (Exception e)
                {
                    failed = e.ToString();
                }
            })).ToList();
            threads.ForEach(thread => thread.Start());
            threads.ForEach(thread => thread.Join());
            Check(failed == null, failed);
        }
    }
}
