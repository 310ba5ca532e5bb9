//! Every input that is kept goes through its door again, without a fuzzer.

use std::path::Path;

#[test]
fn inputs_that_are_kept_pass() {
    for (name, door) in doors::DOORS {
        let mut inputs = 0;
        for folder in ["corpus", "failed"] {
            let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder).join(name);
            let Ok(files) = std::fs::read_dir(&folder) else { continue };
            for file in files {
                let file = file.expect("a file").path();
                door(&std::fs::read(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display())));
                inputs += 1;
            }
        }
        assert!(inputs >= 10, "{name}: {inputs} inputs");
        println!("{name}: {inputs} inputs");
    }
}

/// Each door is also given what no fuzzer starts from: nothing, and bytes that repeat.
#[test]
fn any_bytes_pass() {
    for (_, door) in doors::DOORS {
        door(&[]);
        for byte in 0..=255 {
            door(&[byte]);
            door(&[byte; 97]);
        }
    }
}
