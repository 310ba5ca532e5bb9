// gaugepoint from C#: the C library behind it, with its errors as exceptions and its handles as objects to dispose of.
// C# 7 or later. Compile it together with Generated.cs, which holds what is written from gaugepoint.h.
using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using System.Text;

namespace Gaugepoint
{
    /// <summary>What was refused, and why.</summary>
    public sealed class GaugepointException : Exception
    {
        internal GaugepointException(Status status, string message, Error error) : base(message)
        {
            Status = status;
            Name = Library.NameOf(status);
            Field = Text.Of(error.Field);
            Refused = Text.Of(error.Refused);
            Reason = Text.Of(error.Reason);
            DidYouMean = Text.Of(error.DidYouMean);
            Unit = Text.Of(error.Unit);
            Value = error.HasValue != 0 ? error.Value : (double?)null;
            Lower = error.HasLower != 0 ? error.Lower : (double?)null;
            Upper = error.HasUpper != 0 ? error.Upper : (double?)null;
        }

        /// <summary>Why, as a number; one that is not in the enumeration comes from a later library.</summary>
        public Status Status { get; }
        /// <summary>The status as a word, as it also stands in reports: "out_of_range".</summary>
        public string Name { get; }
        /// <summary>Name of the parameter, or JSON Pointer of the field in a document.</summary>
        public string Field { get; }
        /// <summary>What was refused, as it was given.</summary>
        public string Refused { get; }
        /// <summary>Why, in words.</summary>
        public string Reason { get; }
        /// <summary>What was probably meant; empty when no slip explains it.</summary>
        public string DidYouMean { get; }
        /// <summary>Unit of the three numbers.</summary>
        public string Unit { get; }
        /// <summary>The refused value; null when it is not given.</summary>
        public double? Value { get; }
        /// <summary>Smallest accepted value; null when it is not given.</summary>
        public double? Lower { get; }
        /// <summary>Largest accepted value; null when it is not given.</summary>
        public double? Upper { get; }
    }

    /// <summary>The library that is loaded.</summary>
    public static partial class Library
    {
        /// <summary>Name of the library for the loader: libgaugepoint_c.so, libgaugepoint_c.dylib, gaugepoint_c.dll.</summary>
        internal const string Name = "gaugepoint_c";

        /// <summary>Why the library can not be used; null when it can.</summary>
        private static readonly string Fault = Look();

        private static string Look()
        {
            try
            {
                var abi = gaugepoint_abi();
                return abi == Abi ? null : $"the library {Name} has ABI {abi}, this binding is for ABI {Abi}";
            }
            catch (DllNotFoundException)
            {
                return $"the library {Name} was not found: its folder must be known to the loader (LD_LIBRARY_PATH, PATH)";
            }
            catch (EntryPointNotFoundException)
            {
                return $"the library {Name} that was found is not that of gaugepoint";
            }
            catch (BadImageFormatException)
            {
                return $"the library {Name} that was found is for another processor";
            }
        }

        /// <summary>Throws when the library is missing or another one. Every function does this first.</summary>
        /// <exception cref="DllNotFoundException">With the reason.</exception>
        public static void Check()
        {
            if (Fault != null)
            {
                throw new DllNotFoundException(Fault);
            }
        }

        /// <summary>Version of the library, as "1.2.3".</summary>
        public static string Version
        {
            get
            {
                Check();
                return Text.Of(gaugepoint_version());
            }
        }

        /// <summary>A status as a word: "out_of_range"; "unknown" when it is unknown.</summary>
        public static string NameOf(Status status)
        {
            Check();
            return Text.Of(gaugepoint_status_name((int)status));
        }

        /// <summary>One sentence on a status.</summary>
        public static string TextOf(Status status)
        {
            Check();
            return Text.Of(gaugepoint_status_text((int)status));
        }

        [DllImport(Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_abi();

        [DllImport(Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern IntPtr gaugepoint_version();

        [DllImport(Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern IntPtr gaugepoint_status_name(int status);

        [DllImport(Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern IntPtr gaugepoint_status_text(int status);
    }

    internal partial struct Error
    {
        /// <summary>An error to hand in, once the library is known to be the right one.</summary>
        internal static Error Start()
        {
            Library.Check();
            return new Error { StructSize = Size.Of<Error>() };
        }

        /// <summary>Throws unless the status is 0.</summary>
        internal void Check(int status)
        {
            if (status != 0)
            {
                throw new GaugepointException((Status)status, Text.Of(Message), this);
            }
        }
    }

    internal static class Size
    {
        internal static UIntPtr Of<T>() => (UIntPtr)(uint)Marshal.SizeOf(typeof(T));
    }

    /// <summary>Text of C is UTF-8.</summary>
    internal static class Text
    {
        private static readonly UTF8Encoding Utf8 = new UTF8Encoding(false, true);

        internal static byte[] In(string text)
        {
            if (text == null)
            {
                throw new ArgumentNullException(nameof(text));
            }
            return Utf8.GetBytes(text);
        }

        internal static UIntPtr Length(byte[] text)
        {
            if (text == null)
            {
                throw new ArgumentNullException(nameof(text));
            }
            return (UIntPtr)(uint)text.Length;
        }

        /// <summary>A text that was given, which is freed.</summary>
        internal static string Out(IntPtr text, UIntPtr length)
        {
            try
            {
                var bytes = new byte[checked((int)(ulong)length)];
                Marshal.Copy(text, bytes, 0, bytes.Length);
                return Utf8.GetString(bytes);
            }
            finally
            {
                gaugepoint_text_free(text);
            }
        }

        /// <summary>A text in a structure, up to its NUL.</summary>
        internal static string Of(byte[] text) => Utf8.GetString(text, 0, Array.IndexOf(text, (byte)0));

        /// <summary>A text that lives for ever.</summary>
        internal static string Of(IntPtr text)
        {
            var bytes = new List<byte>();
            for (byte next; (next = Marshal.ReadByte(text, bytes.Count)) != 0;)
            {
                bytes.Add(next);
            }
            return Utf8.GetString(bytes.ToArray());
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern void gaugepoint_text_free(IntPtr text);
    }

    /// <summary>Columns of numbers.</summary>
    internal static class Rows
    {
        /// <summary>How many rows all columns have.</summary>
        internal static int Of(params double[][] columns)
        {
            foreach (var column in columns)
            {
                if (column == null)
                {
                    throw new ArgumentNullException(nameof(columns));
                }
                if (column.Length != columns[0].Length)
                {
                    throw new ArgumentException($"columns of {columns[0].Length} and {column.Length} rows");
                }
            }
            return columns[0].Length;
        }
    }

    /// <summary>Memory that stays where it is while a structure points at it.</summary>
    internal sealed class Pinned : IDisposable
    {
        private readonly List<GCHandle> held = new List<GCHandle>();

        internal IntPtr At(Array values)
        {
            var handle = GCHandle.Alloc(values ?? throw new ArgumentNullException(nameof(values)), GCHandleType.Pinned);
            held.Add(handle);
            return handle.AddrOfPinnedObject();
        }

        public void Dispose() => held.ForEach(handle => handle.Free());
    }

    /// <summary>Decisions.</summary>
    public static class Decision
    {
        /// <summary>
        /// Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
        ///
        /// A limit that is null is none; one must be given. `atLeast` is the probability that the rule ConformanceProbability asks for, or the
        /// ratio that SimpleAcceptanceByRatio asks for; the others do not look at it. `probability` gets the probability of conformity.
        /// </summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Conformity DecideMm(double valueMm, double standardUncertaintyMm, double? lowerMm, double? upperMm, Rule rule,
            double atLeast, out double probability)
        {
            var error = Error.Start();
            error.Check(gaugepoint_decide_mm(valueMm, standardUncertaintyMm, lowerMm.HasValue ? 1 : 0, lowerMm.GetValueOrDefault(),
                upperMm.HasValue ? 1 : 0, upperMm.GetValueOrDefault(), (int)rule, atLeast, out int result, out probability, ref error));
            return (Conformity)result;
        }

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_decide_mm(double valueMm, double standardUncertaintyMm, int hasLower, double lowerMm, int hasUpper,
            double upperMm, int rule, double atLeast, out int result, out double probability, ref Error error);
    }

    /// <summary>What the library holds for an object; freed once, when nothing uses it any more.</summary>
    internal sealed class Handle : SafeHandle
    {
        private readonly Action<IntPtr> free;

        internal Handle(IntPtr made, Action<IntPtr> free) : base(IntPtr.Zero, true)
        {
            this.free = free;
            SetHandle(made);
        }

        public override bool IsInvalid => handle == IntPtr.Zero;

        protected override bool ReleaseHandle()
        {
            free(handle);
            return true;
        }
    }

    /// <summary>
    /// A linear stack of contributors. Lengths are in one unit, the caller's.
    ///
    /// Any thread may use it; calls of one stack wait for each other.
    /// </summary>
    public sealed class Stack : IDisposable
    {
        private readonly Handle handle;

        /// <summary>An empty stack.</summary>
        public Stack()
        {
            var error = Error.Start();
            error.Check(gaugepoint_stack_new(IntPtr.Zero, UIntPtr.Zero, out IntPtr made, ref error));
            handle = new Handle(made, gaugepoint_stack_free);
        }

        /// <summary>Adds a contributor: nominal size, lowest and highest deviation, how it varies with the numbers of that. On failure the stack is as it was.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public void Add(string name, double nominal, double lower, double upper, Variation kind, double[] numbers, double coefficient = 1, int count = 1)
        {
            var error = Error.Start();
            var text = Text.In(name);
            using (var pinned = new Pinned())
            {
                var contributor = new Contributor
                {
                    Name = pinned.At(text),
                    NameLength = Text.Length(text),
                    Nominal = nominal,
                    Lower = lower,
                    Upper = upper,
                    Coefficient = coefficient,
                    Count = (UIntPtr)(uint)Math.Max(count, 0),
                    Kind = kind,
                    Numbers = pinned.At(numbers),
                    NumberCount = (UIntPtr)numbers.Length,
                };
                lock (handle)
                {
                    error.Check(gaugepoint_stack_add(handle, ref contributor, ref error));
                }
            }
        }

        /// <summary>The size that the stack is below with a probability between 0 and 1.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public double Quantile(double probability)
        {
            var error = Error.Start();
            lock (handle)
            {
                error.Check(gaugepoint_stack_quantile(handle, probability, out double result, ref error));
                return result;
            }
        }

        /// <summary>Probabilities below and above two limits, with a bound of their relative error. An infinite limit is no limit.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public Tail Outside(double lower, double upper)
        {
            var error = Error.Start();
            var tail = new Tail { StructSize = Size.Of<Tail>() };
            lock (handle)
            {
                error.Check(gaugepoint_stack_outside(handle, lower, upper, ref tail, ref error));
            }
            return tail;
        }

        /// <summary>Frees it.</summary>
        public void Dispose() => handle.Dispose();

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_stack_new(IntPtr contributors, UIntPtr count, out IntPtr stack, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern void gaugepoint_stack_free(IntPtr stack);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_stack_add(Handle stack, ref Contributor contributor, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_stack_quantile(Handle stack, double probability, out double result, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_stack_outside(Handle stack, double lower, double upper, ref Tail tail, ref Error error);
    }

    /// <summary>A document with its report. It never changes; any number of threads may ask it at once.</summary>
    public sealed class Report : IDisposable
    {
        private readonly Handle handle;

        /// <summary>Evaluates a document of a kind, once. Readings that are missing give a report that says what is missing.</summary>
        /// <exception cref="GaugepointException">The document is refused.</exception>
        public Report(Document kind, string document, bool withWorking = false)
        {
            var error = Error.Start();
            var text = Text.In(document);
            error.Check(gaugepoint_report_new((int)kind, text, Text.Length(text), withWorking ? 1 : 0, out IntPtr made, ref error));
            handle = new Handle(made, gaugepoint_report_free);
        }

        /// <summary>Writes the report.</summary>
        /// <exception cref="GaugepointException">The report is not written in this format.</exception>
        public string Written(Format format)
        {
            var error = Error.Start();
            error.Check(gaugepoint_report_text(handle, (int)format, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }

        /// <summary>What a job comes to.</summary>
        /// <exception cref="GaugepointException">It is the report on another document.</exception>
        public JobVerdict Job()
        {
            var error = Error.Start();
            var verdict = new JobVerdict { StructSize = Size.Of<JobVerdict>() };
            error.Check(gaugepoint_report_job(handle, ref verdict, ref error));
            return verdict;
        }

        /// <summary>What a cylinder of a job comes to; by its place in the report, from 0.</summary>
        /// <exception cref="GaugepointException">There is no such cylinder.</exception>
        public CylinderVerdict Cylinder(int cylinder)
        {
            var error = Error.Start();
            var verdict = new CylinderVerdict { StructSize = Size.Of<CylinderVerdict>() };
            error.Check(gaugepoint_report_cylinder(handle, Place(cylinder), ref verdict, ref error));
            return verdict;
        }

        /// <summary>One decision on a cylinder, by the places of both, from 0.</summary>
        /// <exception cref="GaugepointException">There is no such decision.</exception>
        public JobDecision Decision(int cylinder, int decision)
        {
            var error = Error.Start();
            var found = new JobDecision { StructSize = Size.Of<JobDecision>() };
            error.Check(gaugepoint_report_decision(handle, Place(cylinder), Place(decision), ref found, ref error));
            return found;
        }

        /// <summary>Sentences of the report on a job; `cylinder` is the place of a cylinder, from 0, and 0 with sentences on the engine.</summary>
        /// <exception cref="GaugepointException">It is the report on another document.</exception>
        public List<string> Sentences(Lines lines, int cylinder = 0)
        {
            var all = new List<string>();
            while (true)
            {
                var error = Error.Start();
                var status = gaugepoint_report_line(handle, (int)lines, Place(cylinder), (UIntPtr)(uint)all.Count, out IntPtr text, out UIntPtr length, ref error);
                if ((Status)status == Status.OutOfRange && Text.Of(error.Field) == "index")
                {
                    return all;
                }
                error.Check(status);
                all.Add(Text.Out(text, length));
            }
        }

        /// <summary>Frees it.</summary>
        public void Dispose() => handle.Dispose();

        /// <summary>A place below 0 becomes one that no report has.</summary>
        private static UIntPtr Place(int place) => (UIntPtr)(place < 0 ? int.MaxValue : (uint)place);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_new(int kind, byte[] document, UIntPtr documentLength, int withWorking, out IntPtr report, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern void gaugepoint_report_free(IntPtr report);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_text(Handle report, int format, out IntPtr text, out UIntPtr length, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_job(Handle report, ref JobVerdict verdict, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_cylinder(Handle report, UIntPtr cylinder, ref CylinderVerdict verdict, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_decision(Handle report, UIntPtr cylinder, UIntPtr decision, ref JobDecision found, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_report_line(Handle report, int lines, UIntPtr cylinder, UIntPtr index, out IntPtr text, out UIntPtr length, ref Error error);
    }

    /// <summary>A law of thermal expansion, checked over its whole range. It never changes; any number of threads may ask it at once.</summary>
    public sealed class Expansion : IDisposable
    {
        private static readonly double[] None = { };
        private readonly Handle handle;

        private Expansion(Law law, double[] temperaturesC, double[] coefficients, string name)
        {
            var error = Error.Start();
            var text = Text.In(name);
            using (var pinned = new Pinned())
            {
                law.TemperaturesC = pinned.At(temperaturesC);
                law.Coefficients = pinned.At(coefficients);
                law.Count = (UIntPtr)coefficients.Length;
                law.Name = pinned.At(text);
                law.NameLength = Text.Length(text);
                error.Check(gaugepoint_expansion_new(ref law, out IntPtr made, ref error));
                handle = new Handle(made, gaugepoint_expansion_free);
            }
        }

        /// <summary>A built-in material, by its name.</summary>
        /// <exception cref="GaugepointException">It is not known.</exception>
        public static Expansion BuiltIn(string name) => new Expansion(new Law { Form = LawForm.BuiltIn }, None, None, name);

        /// <summary>One mean coefficient per kelvin from a base temperature, with the range that it holds in.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Expansion Mean(double baseC, double meanPerK, double fromC, double toC) =>
            new Expansion(new Law { Form = LawForm.MeanCoefficient, BaseC = baseC, MeanPerK = meanPerK, FromC = fromC, ToC = toC }, None, None, "");

        /// <summary>Mean coefficients per kelvin from a base temperature to each of rising temperatures.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Expansion MeanTable(double baseC, double[] temperaturesC, double[] coefficients)
        {
            Rows.Of(temperaturesC, coefficients);
            return new Expansion(new Law { Form = LawForm.MeanTable, BaseC = baseC }, temperaturesC, coefficients, "");
        }

        /// <summary>Instantaneous coefficients per kelvin at each of rising temperatures.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Expansion InstantaneousTable(double[] temperaturesC, double[] coefficients)
        {
            Rows.Of(temperaturesC, coefficients);
            return new Expansion(new Law { Form = LawForm.InstantaneousTable }, temperaturesC, coefficients, "");
        }

        /// <summary>A polynomial over kelvin, from the constant up: LawForm.InstantaneousPolynomial or LawForm.StrainPolynomial.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Expansion Polynomial(LawForm form, double[] coefficients, double fromC, double toC) =>
            new Expansion(new Law { Form = form, FromC = fromC, ToC = toC }, None, coefficients, "");

        /// <summary>Graphite iron from its structure: nodularity and graphite in %, pearlite over ferrite.</summary>
        /// <exception cref="GaugepointException">A value is refused.</exception>
        public static Expansion GraphiteIron(double nodularityPercent, double graphitePercent, double pearliteToFerrite) =>
            new Expansion(new Law
            {
                Form = LawForm.GraphiteIron,
                NodularityPercent = nodularityPercent,
                GraphitePercent = graphitePercent,
                PearliteToFerrite = pearliteToFerrite,
            }, None, None, "");

        /// <summary>Lowest and highest temperature that the law holds at.</summary>
        public void Range(out double fromC, out double toC)
        {
            var error = Error.Start();
            error.Check(gaugepoint_expansion_range(handle, out fromC, out toC, ref error));
        }

        /// <summary>Strain from 20 C, instantaneous coefficient, and mean coefficient from 20 C.</summary>
        /// <exception cref="GaugepointException">The temperature is outside the law.</exception>
        public Growth At(double temperatureC)
        {
            var error = Error.Start();
            var growth = new Growth { StructSize = Size.Of<Growth>() };
            error.Check(gaugepoint_expansion_at(handle, temperatureC, ref growth, ref error));
            return growth;
        }

        /// <summary>Mean coefficient per kelvin from one temperature to another.</summary>
        /// <exception cref="GaugepointException">A temperature is outside the law, or both are the same.</exception>
        public double MeanPerK(double fromC, double toC)
        {
            var error = Error.Start();
            error.Check(gaugepoint_expansion_mean_per_k(handle, fromC, toC, out double result, ref error));
            return result;
        }

        /// <summary>Strains from 20 C at temperatures in any order.</summary>
        /// <exception cref="GaugepointException">A temperature is outside the law; its place is in the field.</exception>
        public double[] Strains(double[] temperaturesC)
        {
            var error = Error.Start();
            var strains = new double[Rows.Of(temperaturesC)];
            error.Check(gaugepoint_expansion_strains(handle, temperaturesC, (UIntPtr)strains.Length, strains, ref error));
            return strains;
        }

        /// <summary>Frees it.</summary>
        public void Dispose() => handle.Dispose();

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_expansion_new(ref Law law, out IntPtr expansion, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern void gaugepoint_expansion_free(IntPtr expansion);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_expansion_range(Handle expansion, out double fromC, out double toC, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_expansion_at(Handle expansion, double temperatureC, ref Growth growth, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_expansion_mean_per_k(Handle expansion, double fromC, double toC, out double result, ref Error error);

        [DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]
        private static extern int gaugepoint_expansion_strains(Handle expansion, double[] temperaturesC, UIntPtr count, [Out] double[] strains, ref Error error);
    }
}
