//! What the bindings of `hosts` repeat of the header, written from it: statuses, enumerations, records, flat functions and documents.
//! `UPDATE_BINDINGS=1 cargo test -p gaugepoint-ffi --test bindings` writes it.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a test stops where it fails")]

mod generated;

use generated::{holds, text};
use std::fmt::Write as _;

/// Enumerations that the bindings have.
const ENUMERATIONS: &[&str] = &[
    "Status",
    "Rule",
    "Document",
    "Format",
    "Outcome",
    "Judged",
    "Lines",
    "Conformity",
    "Variation",
    "LawForm",
];

/// Structures that the bindings have.
const RECORDS: &[&str] =
    &["Error", "JobVerdict", "CylinderVerdict", "JobDecision", "Contributor", "Tail", "Law", "Growth"];

/// First words of what is written.
const ORIGIN: &str = "of gaugepoint.h. Generated from it; the test that compares it also writes it.";

/// A declaration with its comment.
#[derive(Debug, Clone)]
struct Item {
    name: String,
    doc: Vec<String>,
    of: Of,
}

#[derive(Debug, Clone)]
enum Of {
    /// Names with their numbers.
    Enumeration(Vec<Item>),
    Number(i32),
    /// Fields.
    Record(Vec<Item>),
    /// Type of a field or of a parameter, and how many there are of it.
    Value(String, usize),
    /// Type of the result, and the parameters.
    Function(String, Vec<(String, String)>),
}

impl Item {
    fn parts(&self) -> &[Item] {
        match &self.of {
            Of::Enumeration(parts) | Of::Record(parts) => parts,
            Of::Number(_) | Of::Value(..) | Of::Function(..) => &[],
        }
    }

    fn number(&self) -> i32 {
        if let Of::Number(number) = self.of { number } else { panic!("{self:?}") }
    }

    fn value(&self) -> (&str, usize) {
        if let Of::Value(kind, count) = &self.of { (kind, *count) } else { panic!("{self:?}") }
    }

    /// Names of the parameters when this is a function of doubles that gives one double.
    fn flat(&self) -> Option<Vec<&str>> {
        let Of::Function(result, parameters) = &self.of else { return None };
        let (doubles, rest) = parameters.split_at(parameters.iter().take_while(|p| p.0 == "double").count());
        let rest: Vec<&str> = rest.iter().map(|p| p.0.as_str()).collect();
        let flat =
            result == "int32_t" && !doubles.is_empty() && rest == ["double *", "struct GaugepointError *"];
        flat.then(|| doubles.iter().map(|p| p.1.as_str()).collect())
    }

    /// Does it take a document, perhaps with working, and give a text?
    fn document(&self) -> Option<bool> {
        let Of::Function(_, parameters) = &self.of else { return None };
        let kinds: Vec<&str> = parameters.iter().map(|p| p.0.as_str()).collect();
        match kinds.as_slice() {
            ["const char *", "size_t", "char **", "size_t *", "struct GaugepointError *"] => Some(false),
            ["const char *", "size_t", "int32_t", "char **", "size_t *", "struct GaugepointError *"] => {
                (parameters.iter().any(|p| p.1 == "with_working")).then_some(true)
            }
            _ => None,
        }
    }
}

/// Splits at comments of one depth: what each says, and what follows it.
fn commented(text: &str, depth: &str) -> Vec<(Vec<String>, String)> {
    let (start, end) = (format!("\n{depth}/**\n"), format!("\n{depth} */\n"));
    let parts = text.split(&start).skip(1).map(|block| block.split_once(&end).unwrap());
    parts
        .map(|(doc, rest)| {
            let line = |l: &str| {
                l.trim_start().trim_start_matches('*').trim().replace('`', "").replace("gaugepoint_", "")
            };
            (doc.lines().map(line).collect(), rest.to_owned())
        })
        .collect()
}

/// `double *out` as its type and its name.
fn declared(text: &str) -> (String, String) {
    let at = text.rfind([' ', '*']).unwrap() + 1;
    (text.get(..at).unwrap().trim().to_owned(), text.get(at..).unwrap().to_owned())
}

fn parts_of(body: &str, prefix: &str) -> Vec<Item> {
    let parts = commented(body, "  ").into_iter();
    parts
        .map(|(doc, rest)| {
            let line = rest.lines().next().unwrap().trim().trim_end_matches([',', ';']);
            if let Some((name, number)) = line.split_once(" = ") {
                let name = name.strip_prefix(prefix).unwrap_or(name).to_owned();
                return Item { name, doc, of: Of::Number(number.parse().unwrap()) };
            }
            let (kind, name) = declared(line);
            let (name, count) = name.trim_end_matches(']').split_once('[').unwrap_or((&name, "1"));
            Item { name: name.to_owned(), doc, of: Of::Value(kind, count.parse().unwrap()) }
        })
        .collect()
}

fn snake(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.extend(c.to_lowercase());
    }
    out
}

fn function(doc: Vec<String>, rest: &str) -> Option<Item> {
    let line: Vec<&str> = rest.split_once(");")?.0.split_whitespace().collect();
    let line = line.join(" ");
    let (head, parameters) = line.split_once('(')?;
    let (result, name) = declared(head);
    let parameters = parameters.split(", ").filter(|p| *p != "void").map(declared).collect();
    let name = name.strip_prefix("gaugepoint_")?.to_owned();
    Some(Item { name, doc, of: Of::Function(result, parameters) })
}

/// Enumerations, structures and functions of the header.
fn header(text: &str) -> Vec<Item> {
    let item = |(doc, rest): (Vec<String>, String)| {
        let start = rest.lines().next()?;
        if !start.ends_with('{') {
            return function(doc, &rest);
        }
        let name = start.rsplit_once("Gaugepoint")?.1.trim_end_matches(" {").to_owned();
        let body = rest.split_once("\n}").unwrap().0;
        let of = if start.contains("enum ") {
            let prefix = format!("GAUGEPOINT_{}_", snake(&name).to_uppercase());
            Of::Enumeration(parts_of(body, &prefix))
        } else {
            Of::Record(parts_of(body, ""))
        };
        Some(Item { name, doc, of })
    };
    commented(text, "").into_iter().filter_map(item).collect()
}

fn chosen<'a>(items: &'a [Item], names: &[&str]) -> Vec<&'a Item> {
    let found = |name: &&str| {
        let typed = |item: &&Item| item.name == **name && !item.parts().is_empty();
        items.iter().find(typed).unwrap_or_else(|| panic!("{name} is not in the header"))
    };
    names.iter().map(found).collect()
}

/// `bore_mm` as `boreMm`, or as `BoreMm`.
fn camel(name: &str, upper: bool) -> String {
    let mut out = String::new();
    let mut up = upper;
    for c in name.to_lowercase().chars() {
        match c {
            '_' => up = true,
            _ if up => {
                out.extend(c.to_uppercase());
                up = false;
            }
            _ => out.push(c),
        }
    }
    out
}

/// Paragraphs in lines of at most 100 columns, an empty line between them.
fn wrapped(doc: &[String]) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for paragraph in doc.split(String::is_empty) {
        if !out.is_empty() {
            out.push(String::new());
        }
        out.push(String::new());
        for word in paragraph.iter().flat_map(|line| line.split(' ')) {
            let line = out.last_mut().unwrap();
            if line.is_empty() {
                word.clone_into(line);
            } else if line.len() + word.len() < 100 {
                write!(line, " {word}").unwrap();
            } else {
                out.push(word.to_owned());
            }
        }
    }
    out
}

/// Names as a list, each in its form.
fn each(names: &[impl AsRef<str>], form: impl Fn(&str) -> String) -> String {
    names.iter().map(|name| form(name.as_ref())).collect::<Vec<_>>().join(", ")
}

/// The words of a function of rows.
const ROWS: &str = "of each row: the first row that is refused refuses the call.";
const ROWS_WITH_STATUS: &str = "of each row: 0 or why it is refused, and NaN, for each.";

mod csharp {
    use super::{Item, ORIGIN, ROWS, ROWS_WITH_STATUS, camel, wrapped};
    use std::fmt::Write as _;

    fn summary(out: &mut String, indent: &str, doc: &[String]) {
        let escape = |l: String| l.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        let lines: Vec<String> = wrapped(doc).into_iter().map(escape).collect();
        if let [line] = lines.as_slice() {
            writeln!(out, "{indent}/// <summary>{line}</summary>").unwrap();
            return;
        }
        writeln!(out, "{indent}/// <summary>").unwrap();
        for line in lines {
            writeln!(out, "{}", format!("{indent}/// {line}").trim_end()).unwrap();
        }
        writeln!(out, "{indent}/// </summary>").unwrap();
    }

    fn enumeration(out: &mut String, item: &Item) {
        summary(out, "    ", &item.doc);
        writeln!(out, "    public enum {}\n    {{", item.name).unwrap();
        for part in item.parts() {
            summary(out, "        ", &part.doc);
            writeln!(out, "        {} = {},", camel(&part.name, true), part.number()).unwrap();
        }
        *out += "    }\n\n";
    }

    /// Enumeration that a number is of, by its comment.
    fn kind_of_number(doc: &[String]) -> &str {
        let named = doc.first().and_then(|line| line.strip_prefix("A Gaugepoint"));
        let word = named.and_then(|rest| rest.split([':', '.', ';']).next());
        word.filter(|word| super::ENUMERATIONS.contains(word)).unwrap_or("int")
    }

    fn record(out: &mut String, item: &Item) {
        summary(out, "    ", &item.doc);
        let seen = if item.parts().iter().any(|p| p.value().0.ends_with('*') || p.value().0 == "char") {
            "internal partial"
        } else {
            "public"
        };
        let head = "    [StructLayout(LayoutKind.Sequential)]";
        writeln!(out, "{head}\n    {seen} struct {}\n    {{", item.name).unwrap();
        for part in item.parts() {
            let (name, (kind, room)) = (camel(&part.name, true), part.value());
            let number = kind_of_number(&part.doc);
            if kind == "size_t" && seen == "public" && part.name != "struct_size" {
                let hidden = camel(&part.name, false);
                writeln!(out, "        private UIntPtr {hidden};").unwrap();
                summary(out, "        ", &part.doc);
                writeln!(out, "        public long {name} => (long)(ulong){hidden};").unwrap();
                continue;
            }
            summary(out, "        ", &part.doc);
            match kind {
                "size_t" => writeln!(out, "        internal UIntPtr {name};"),
                "int32_t" => writeln!(out, "        public {number} {name};"),
                "double" => writeln!(out, "        public double {name};"),
                "char" => writeln!(
                    out,
                    "        [MarshalAs(UnmanagedType.ByValArray, SizeConst = {room})]\n        public byte[] {name};"
                ),
                _ => writeln!(out, "        public IntPtr {name};"),
            }
            .unwrap();
        }
        *out += "    }\n\n";
    }

    fn imported(out: &mut String, name: &str, parameters: &str) {
        let rule = "[DllImport(Library.Name, CallingConvention = CallingConvention.Cdecl)]";
        writeln!(out, "        {rule}\n        private static extern int gaugepoint_{name}({parameters}, ref Error error);\n")
            .unwrap();
    }

    fn flat(out: &mut String, item: &Item, arrays: bool) {
        let names: Vec<String> = item.flat().unwrap().into_iter().map(|p| camel(p, false)).collect();
        let each = |kind: &str| super::each(&names, |name| format!("{kind} {name}"));
        let (c, name, given) = (&item.name, camel(&item.name, true), names.join(", "));
        summary(out, "        ", &item.doc);
        write!(
            out,
            "        /// <exception cref=\"GaugepointException\">A value is refused.</exception>
        public static double {name}({numbers})
        {{
            var error = Error.Start();
            error.Check(gaugepoint_{c}({given}, out double result, ref error));
            return result;
        }}

",
            numbers = each("double")
        )
        .unwrap();
        imported(out, c, &format!("{}, out double result", each("double")));
        if !arrays {
            return;
        }
        write!(
            out,
            "        /// <summary>{name} {ROWS}</summary>
        /// <exception cref=\"GaugepointException\">A value is refused.</exception>
        public static double[] {name}({columns})
        {{
            var error = Error.Start();
            var result = new double[Rows.Of({given})];
            error.Check(gaugepoint_{c}_array({given}, (UIntPtr)result.Length, result, null, ref error));
            return result;
        }}

        /// <summary>{name} {ROWS_WITH_STATUS}</summary>
        public static double[] {name}({columns}, out Status[] rowStatus)
        {{
            var error = Error.Start();
            var result = new double[Rows.Of({given})];
            rowStatus = new Status[result.Length];
            error.Check(gaugepoint_{c}_array({given}, (UIntPtr)result.Length, result, rowStatus, ref error));
            return result;
        }}

",
            columns = each("double[]")
        )
        .unwrap();
        let outputs = "UIntPtr count, [Out] double[] result, [Out] Status[] rowStatus";
        imported(out, &format!("{c}_array"), &format!("{}, {outputs}", each("double[]")));
    }

    fn document(out: &mut String, item: &Item, working: bool) {
        let (c, name) = (&item.name, camel(&item.name, true));
        let (asked, passed) =
            if working { (", bool withWorking = false", ", withWorking") } else { ("", "") };
        let flag = if working { ", withWorking ? 1 : 0" } else { "" };
        summary(out, "        ", item.doc.get(..1).unwrap());
        write!(
            out,
            "        /// <exception cref=\"GaugepointException\">The document is refused.</exception>
        public static string {name}(string document{asked}) => {name}(Text.In(document){passed});

        /// <summary>{name} of UTF-8.</summary>
        public static string {name}(byte[] document{asked})
        {{
            var error = Error.Start();
            error.Check(gaugepoint_{c}(document, Text.Length(document){flag}, out IntPtr text, out UIntPtr length, ref error));
            return Text.Out(text, length);
        }}

"
        )
        .unwrap();
        let flag = if working { ", int withWorking" } else { "" };
        imported(
            out,
            c,
            &format!("byte[] document, UIntPtr documentLength{flag}, out IntPtr text, out UIntPtr length"),
        );
    }

    pub(super) fn generated(all: &super::All<'_>) -> String {
        let mut out = format!(
            "// Statuses, enumerations, records, flat functions and documents\n// {ORIGIN}\n\
             using System;\nusing System.Runtime.InteropServices;\n\n\
             // the library writes the fields\n#pragma warning disable 0169, 0649\n\nnamespace Gaugepoint\n{{\n"
        );
        all.enumerations.iter().for_each(|item| enumeration(&mut out, item));
        all.records.iter().for_each(|item| record(&mut out, item));
        write!(
            out,
            "    public static partial class Library
    {{
        /// <summary>Number of the ABI that this binding is for.</summary>
        public const int Abi = {};
    }}

",
            all.abi
        )
        .unwrap();
        out += "    /// <summary>Functions of plain doubles that give one double; the last word of a name is its unit.</summary>\n";
        out += "    public static class Flat\n    {\n";
        all.flat.iter().for_each(|(item, arrays)| flat(&mut out, item, *arrays));
        out = out.trim_end().to_owned() + "\n    }\n\n";
        out += "    /// <summary>Documents in, reports out, both JSON.</summary>\n";
        out += "    public static class Documents\n    {\n";
        all.documents.iter().for_each(|(item, working)| document(&mut out, item, *working));
        out.trim_end().to_owned() + "\n    }\n}\n"
    }
}

mod java {
    use super::{Item, ORIGIN, ROWS, ROWS_WITH_STATUS, camel, wrapped};
    use std::fmt::Write as _;

    fn comment(out: &mut String, indent: &str, doc: &[String], throws: &str) {
        let escape = |l: String| l.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        let mut lines: Vec<String> = wrapped(doc).into_iter().map(escape).collect();
        if !throws.is_empty() {
            lines.extend([String::new(), format!("@throws GaugepointException {throws}")]);
        }
        if let [line] = lines.as_slice() {
            writeln!(out, "{indent}/** {line} */").unwrap();
            return;
        }
        writeln!(out, "{indent}/**").unwrap();
        for line in lines {
            writeln!(out, "{}", format!("{indent} * {line}").trim_end()).unwrap();
        }
        writeln!(out, "{indent} */").unwrap();
    }

    fn enumeration(out: &mut String, item: &Item) {
        comment(out, "    ", &item.doc, "");
        writeln!(
            out,
            "    public static final class {0} {{\n        private {0}() {{\n        }}\n",
            item.name
        )
        .unwrap();
        for part in item.parts() {
            comment(out, "        ", &part.doc, "");
            writeln!(out, "        public static final int {} = {};", part.name, part.number()).unwrap();
        }
        *out += "    }\n\n";
    }

    fn record(out: &mut String, item: &Item) {
        let fields: Vec<String> =
            item.parts().iter().map(|p| format!("\"{}\"", camel(&p.name, false))).collect();
        comment(out, "    ", &item.doc, "");
        writeln!(out, "    @Structure.FieldOrder({{{}}})", fields.join(", ")).unwrap();
        writeln!(out, "    public static final class {} extends Structure {{", item.name).unwrap();
        for part in item.parts() {
            let (name, (kind, room)) = (camel(&part.name, false), part.value());
            comment(out, "        ", &part.doc, "");
            match kind {
                "size_t" => writeln!(out, "        public Gaugepoint.SizeT {name} = new Gaugepoint.SizeT();"),
                "int32_t" => writeln!(out, "        public int {name};"),
                "double" => writeln!(out, "        public double {name};"),
                "char" => writeln!(out, "        public byte[] {name} = new byte[{room}];"),
                _ => writeln!(out, "        public Pointer {name};"),
            }
            .unwrap();
        }
        let sized = item.parts().iter().any(|p| p.name == "struct_size");
        let body = if sized { "            structSize.setValue(size());\n" } else { "" };
        writeln!(out, "\n        /** Zeroed{}. */", if sized { ", with its size" } else { "" }).unwrap();
        writeln!(out, "        public {}() {{\n{body}        }}\n    }}\n", item.name).unwrap();
    }

    fn flat(out: &mut String, item: &Item, arrays: bool) {
        let names: Vec<String> = item.flat().unwrap().into_iter().map(|p| camel(p, false)).collect();
        let each = |kind: &str| super::each(&names, |name| format!("{kind} {name}"));
        let (c, name, given) = (&item.name, camel(&item.name, false), names.join(", "));
        comment(out, "    ", &item.doc, "when a value is refused");
        write!(
            out,
            "    public static double {name}({numbers}) {{
        Records.Error error = Gaugepoint.error();
        double[] out = {{Double.NaN}};
        Gaugepoint.check(gaugepoint_{c}({given}, out, error), error);
        return out[0];
    }}

    private static native int gaugepoint_{c}({numbers}, double[] out, Records.Error error);

",
            numbers = each("double")
        )
        .unwrap();
        if !arrays {
            return;
        }
        write!(
            out,
            "    /**
     * {name} {ROWS}
     *
     * @throws GaugepointException when a value is refused; its place stands in the field
     */
    public static double[] {name}({columns}) {{
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows({given})];
        Gaugepoint.check(gaugepoint_{c}_array({given}, new Gaugepoint.SizeT(out.length), out, null, error), error);
        return out;
    }}

    /** {name} {ROWS_WITH_STATUS} rowStatus has a place for each. */
    public static double[] {name}({columns}, int[] rowStatus) {{
        Records.Error error = Gaugepoint.error();
        double[] out = new double[Gaugepoint.rows({given})];
        Gaugepoint.rows(rowStatus, out.length);
        Gaugepoint.check(gaugepoint_{c}_array({given}, new Gaugepoint.SizeT(out.length), out, rowStatus, error), error);
        return out;
    }}

    private static native int gaugepoint_{c}_array({columns}, Gaugepoint.SizeT count, double[] out, int[] rowStatus,
            Records.Error error);

",
            columns = each("double[]")
        )
        .unwrap();
    }

    fn document(out: &mut String, item: &Item, working: bool) {
        let (c, name) = (&item.name, camel(&item.name, false));
        let (asked, passed, flag, native) = if working {
            (", boolean withWorking", ", withWorking", ", withWorking ? 1 : 0", "int withWorking, ")
        } else {
            ("", "", "", "")
        };
        comment(out, "    ", item.doc.get(..1).unwrap(), "when the document is refused");
        write!(
            out,
            "    public static String {name}(String document{asked}) {{
        return {name}(Gaugepoint.bytes(document){passed});
    }}

    /** {name} of UTF-8. */
    public static String {name}(byte[] document{asked}) {{
        Records.Error error = Gaugepoint.error();
        Gaugepoint.Given given = new Gaugepoint.Given();
        Gaugepoint.check(gaugepoint_{c}(document, new Gaugepoint.SizeT(document.length){flag}, given.text, given.length, error), error);
        return given.taken();
    }}

    private static native int gaugepoint_{c}(byte[] document, Gaugepoint.SizeT documentLength, {native}PointerByReference text,
            Gaugepoint.SizeTByReference length, Records.Error error);

"
        )
        .unwrap();
    }

    fn class(name: &str, what: &str, imports: &str, registered: bool, body: &str) -> String {
        let natives = if registered {
            format!("    static {{\n        Gaugepoint.register({name}.class);\n    }}\n\n")
        } else {
            String::new()
        };
        let body = body.trim_end();
        format!(
            "package gaugepoint;\n\n{imports}/** {what} {ORIGIN} */\npublic final class {name} {{\n{natives}    private {name}() {{\n    }}\n\n{body}\n}}\n"
        )
    }

    pub(super) fn generated(all: &super::All<'_>) -> Vec<(&'static str, String)> {
        let mut parts = [const { String::new() }; 4];
        let [codes, records, functions, documents] = &mut parts;
        writeln!(
            codes,
            "    /** Number of the ABI that this binding is for. */\n    public static final int ABI = {};\n",
            all.abi
        )
        .unwrap();
        all.enumerations.iter().for_each(|item| enumeration(codes, item));
        all.records.iter().for_each(|item| record(records, item));
        all.flat.iter().for_each(|(item, arrays)| flat(functions, item, *arrays));
        all.documents.iter().for_each(|(item, working)| document(documents, item, *working));
        let structure = "import com.sun.jna.Pointer;\nimport com.sun.jna.Structure;\n\n";
        let reference = "import com.sun.jna.ptr.PointerByReference;\n\n";
        vec![
            (
                "hosts/java/gaugepoint/Codes.java",
                class("Codes", "Statuses and enumerations", "", false, codes),
            ),
            ("hosts/java/gaugepoint/Records.java", class("Records", "Structures", structure, false, records)),
            (
                "hosts/java/gaugepoint/Flat.java",
                class("Flat", "Functions of plain doubles", "", true, functions),
            ),
            (
                "hosts/java/gaugepoint/Documents.java",
                class("Documents", "Documents in, reports out, both JSON;", reference, true, documents),
            ),
        ]
    }
}

mod python {
    use super::{Item, ROWS, ROWS_WITH_STATUS, wrapped};
    use std::fmt::Write as _;

    /// The lines that stand before and after what is generated.
    pub(super) const AROUND: [&str; 2] = [
        "# From here to the next such line all is of gaugepoint.h. Generated from it; the test that compares it also writes it.\n",
        "# Here ends what is generated.\n",
    ];

    fn docstring(out: &mut String, indent: &str, doc: &[String]) {
        let lines: Vec<String> = wrapped(doc).into_iter().map(|l| l.replace('\\', "\\\\")).collect();
        let quote = "\"\"\"";
        if let [line] = lines.as_slice() {
            writeln!(out, "{indent}{quote}{line}{quote}").unwrap();
            return;
        }
        for (k, line) in lines.iter().enumerate() {
            let start = if k == 0 { quote } else { "" };
            writeln!(out, "{}", format!("{indent}{start}{line}").trim_end()).unwrap();
        }
        writeln!(out, "{indent}{quote}").unwrap();
    }

    fn remark(out: &mut String, indent: &str, doc: &[String]) {
        wrapped(doc).iter().for_each(|line| writeln!(out, "{indent}# {line}").unwrap());
    }

    fn enumeration(out: &mut String, item: &Item) {
        writeln!(out, "class {}(IntEnum):", item.name).unwrap();
        docstring(out, "    ", &item.doc);
        *out += "\n";
        for part in item.parts() {
            remark(out, "    ", &part.doc);
            writeln!(out, "    {} = {}", part.name, part.number()).unwrap();
        }
        *out += "\n\n";
    }

    fn record(out: &mut String, item: &Item) {
        writeln!(out, "class {}(Structure):", item.name).unwrap();
        docstring(out, "    ", &item.doc);
        *out += "\n    _fields_ = [\n";
        for part in item.parts() {
            let (kind, room) = part.value();
            let kind = match kind {
                "size_t" => "c_size_t".to_owned(),
                "int32_t" => "c_int32".to_owned(),
                "double" => "c_double".to_owned(),
                "char" => format!("c_char * {room}"),
                "const double *" => "POINTER(c_double)".to_owned(),
                _ => "c_char_p".to_owned(),
            };
            remark(out, "        ", &part.doc);
            writeln!(out, "        (\"{}\", {kind}),", part.name).unwrap();
        }
        *out += "    ]\n\n\n";
    }

    fn flat(out: &mut String, item: &Item, arrays: bool) {
        let names = item.flat().unwrap();
        let each = |kind: &str| super::each(&names, |name| format!("{name}: {kind}"));
        let (name, given) = (&item.name, names.join(", "));
        writeln!(out, "    def {name}(self, {}) -> float:", each("float")).unwrap();
        docstring(out, "        ", &item.doc);
        writeln!(out, "        return self._flat(\"{name}\", {given})\n").unwrap();
        if !arrays {
            return;
        }
        let columns = each("Iterable[float]");
        write!(
            out,
            "    def {name}_array(self, {columns}) -> array:
        \"\"\"{name} {ROWS}\"\"\"
        return self._rows(\"{name}_array\", {given})

    def {name}_array_with_status(self, {columns}) -> tuple[array, array]:
        \"\"\"{name} {ROWS_WITH_STATUS}\"\"\"
        return self._rows_with_status(\"{name}_array\", {given})

"
        )
        .unwrap();
    }

    fn document(out: &mut String, item: &Item, working: bool) {
        let name = &item.name;
        let (asked, passed) =
            if working { (", with_working: bool = False", ", c_int32(with_working)") } else { ("", "") };
        writeln!(out, "    def {name}(self, document: str | bytes{asked}) -> str:").unwrap();
        docstring(out, "        ", item.doc.get(..1).unwrap());
        writeln!(out, "        return self._text(\"{name}\", *_text_in(document){passed})\n").unwrap();
    }

    pub(super) fn generated(all: &super::All<'_>) -> String {
        let mut out = format!("{}\nABI = {}\n\n\n", AROUND[0], all.abi);
        all.enumerations.iter().for_each(|item| enumeration(&mut out, item));
        all.records.iter().for_each(|item| record(&mut out, item));
        out += "class _Functions:\n    \"\"\"Flat functions and documents, under the names of the header.\"\"\"\n\n";
        all.flat.iter().for_each(|(item, arrays)| flat(&mut out, item, *arrays));
        all.documents.iter().for_each(|(item, working)| document(&mut out, item, *working));
        out + "\n" + AROUND[1]
    }
}

mod vba {
    use super::{Item, wrapped};
    use std::fmt::Write as _;

    /// The lines before and after what is declared, and before and after what calls it: a module declares before it does anything.
    pub(super) const DECLARED: [&str; 2] = [
        "' What follows is generated from gaugepoint.h. The test that compares it also writes it.\n",
        "' Here ends what is generated.\n",
    ];
    pub(super) const CALLING: [&str; 2] = [
        "' What follows is generated from gaugepoint.h, too. The test that compares it also writes it.\n",
        "' Here ends what is generated, too.\n",
    ];

    /// Words between parentheses, in lines of at most 140 columns: a line that ends in " _" goes on.
    fn list(out: &mut String, start: &str, words: &[String], end: &str) {
        let mut line = start.to_owned();
        for (k, word) in words.iter().enumerate() {
            let comma = if k + 1 < words.len() { ", " } else { "" };
            if line.len() + word.len() > 138 {
                writeln!(out, "{}_", line.trim_end().to_owned() + " ").unwrap();
                line = "    ".to_owned();
            }
            line += word;
            line += comma;
        }
        writeln!(out, "{line}{end}").unwrap();
    }

    /// Bytes before a field, and of the whole, where pointers have 64 bits.
    fn places(record: &Item) -> (Vec<(&str, usize)>, usize) {
        let mut at = 0;
        let mut places = Vec::new();
        for part in record.parts() {
            let (kind, count) = part.value();
            let one = match kind {
                "char" => 1,
                "int32_t" => 4,
                _ => 8,
            };
            at = usize::next_multiple_of(at, one);
            places.push((part.name.as_str(), at));
            at += one * count;
        }
        (places, at.next_multiple_of(8))
    }

    fn numbers(out: &mut String, all: &super::All<'_>, of: &str) {
        let item = all.enumerations.iter().find(|item| item.name == of).unwrap();
        for part in item.parts() {
            let name = format!("{}_{}", of.to_uppercase(), part.name);
            writeln!(out, "Private Const {name} As Long = {}", part.number()).unwrap();
        }
    }

    pub(super) fn declared(all: &super::All<'_>) -> String {
        let mut out = DECLARED[0].to_owned();
        let error = all.records.iter().find(|record| record.name == "Error").unwrap();
        let (places, size) = places(error);
        let message = places.iter().find(|place| place.0 == "message").unwrap().1;
        writeln!(out, "Private Const ABI As Long = {}", all.abi).unwrap();
        writeln!(
            out,
            "Private Const ERROR_SIZE As Long = {size}\nPrivate Const ERROR_MESSAGE As Long = {message}"
        )
        .unwrap();
        numbers(&mut out, all, "Rule");
        numbers(&mut out, all, "Conformity");
        for (item, _) in &all.flat {
            let mut parameters: Vec<String> =
                item.flat().unwrap().iter().map(|name| format!("ByVal {name} As Double")).collect();
            parameters.extend(["ByRef out As Double".to_owned(), "ByVal details As LongPtr".to_owned()]);
            let start = format!(
                "Private Declare PtrSafe Function gaugepoint_{} Lib \"gaugepoint_c.dll\" (",
                item.name
            );
            list(&mut out, &start, &parameters, ") As Long");
        }
        out + DECLARED[1]
    }

    /// A function from a number of an enumeration, or its word, to the other.
    fn words(out: &mut String, all: &super::All<'_>, of: &str, to_word: bool) {
        let item = all.enumerations.iter().find(|item| item.name == of).unwrap();
        let result = if to_word { "String" } else { "Long" };
        writeln!(out, "Private Function {of}Of(ByVal given As Variant) As {result}").unwrap();
        out.push_str("    Select Case given\n");
        for part in item.parts() {
            let word = format!("\"{}\"", part.name.to_lowercase().replace('_', " "));
            let number = format!("{}_{}", of.to_uppercase(), part.name);
            let (from, to) = if to_word { (&number, &word) } else { (&word, &number) };
            writeln!(out, "    Case {from}: {of}Of = {to}").unwrap();
        }
        out.push_str("    End Select\nEnd Function\n\n");
    }

    pub(super) fn calling(all: &super::All<'_>) -> String {
        let mut out = CALLING[0].to_owned();
        words(&mut out, all, "Rule", false);
        words(&mut out, all, "Conformity", true);
        out += "' A function of the library by its name.\n";
        out += "Private Function Called(ByVal which As String, ByRef n() As Double, ByRef out As Double, ByVal details As LongPtr) As Long\n";
        out += "    Select Case which\n";
        for (item, _) in &all.flat {
            let mut given: Vec<String> =
                (0..item.flat().unwrap().len()).map(|place| format!("n({place})")).collect();
            given.extend(["out".to_owned(), "details".to_owned()]);
            writeln!(out, "    Case \"{}\"", item.name.to_uppercase()).unwrap();
            list(&mut out, &format!("        Called = gaugepoint_{}(", item.name), &given, ")");
        }
        // an error that the caller tells
        out += "    Case Else: Err.Raise 5\n    End Select\nEnd Function\n";
        for (item, _) in &all.flat {
            let (name, parameters) = (item.name.to_uppercase(), item.flat().unwrap());
            out += "\n";
            wrapped(&item.doc)
                .iter()
                .for_each(|line| writeln!(out, "{}", format!("' {line}").trim_end()).unwrap());
            let variants: Vec<String> = parameters.iter().map(|p| format!("ByVal {p} As Variant")).collect();
            list(&mut out, &format!("Public Function {name}("), &variants, ") As Variant");
            let mut given = vec![format!("\"{name}\"")];
            given.extend(parameters.iter().map(|&p| p.to_owned()));
            list(&mut out, &format!("    {name} = Row("), &given, ")");
            out += "End Function\n";
        }
        out + CALLING[1]
    }
}

/// What the bindings get.
struct All<'a> {
    /// Number of the ABI.
    abi: i32,
    enumerations: Vec<&'a Item>,
    records: Vec<&'a Item>,
    /// Functions, and whether they have arrays.
    flat: Vec<(&'a Item, bool)>,
    /// Functions, and whether they have working.
    documents: Vec<(&'a Item, bool)>,
}

fn all<'a>(header: &str, items: &'a [Item]) -> All<'a> {
    let abi = header.lines().find_map(|line| line.strip_prefix("#define GAUGEPOINT_ABI "));
    let has_arrays = |item: &Item| items.iter().any(|other| other.name == format!("{}_array", item.name));
    All {
        abi: abi.and_then(|number| number.parse().ok()).unwrap(),
        enumerations: chosen(items, ENUMERATIONS),
        records: chosen(items, RECORDS),
        flat: items.iter().filter(|i| i.flat().is_some()).map(|i| (i, has_arrays(i))).collect(),
        documents: items.iter().filter_map(|i| i.document().map(|working| (i, working))).collect(),
    }
}

/// The module of Python, of which a part is generated.
const MODULE: &str = "hosts/ctypes/gaugepoint_ctypes.py";

/// The module of Visual Basic, of which two parts are.
const BASIC: &str = "excel/GAUGEPOINT.bas";

/// A file with another part between two lines.
fn with_part(file: &str, around: [&str; 2], part: &str) -> String {
    let (before, rest) = file.split_once(around[0]).unwrap();
    let (_, after) = rest.split_once(around[1]).unwrap();
    format!("{before}{part}{after}")
}

/// Files with what they hold.
fn files(all: &All<'_>) -> Vec<(&'static str, String)> {
    let mut files = java::generated(all);
    files.push((MODULE, with_part(&text(MODULE), python::AROUND, &python::generated(all))));
    files.push(("hosts/csharp/Generated.cs", csharp::generated(all)));
    let declared = with_part(&text(BASIC), vba::DECLARED, &vba::declared(all));
    files.push((BASIC, with_part(&declared, vba::CALLING, &vba::calling(all))));
    files
}

#[test]
fn bindings_are_what_the_header_says() {
    let text_of_header = text("include/gaugepoint.h");
    let items = header(&text_of_header);
    let all = all(&text_of_header, &items);
    for (file, generated) in files(&all) {
        holds(file, &generated, "bindings");
    }
    // each flat function of the table, and each function that gives a report
    assert_eq!(
        all.flat.iter().filter(|f| f.1).count(),
        text_of_header.matches("as a value; NaN where").count()
    );
    assert!(all.documents.len() >= 8, "{:?}", all.documents.len());
}
