//! x
#[test]
fn schema() {
    std::fs::write("/tmp/schema.json", serde_json::to_string_pretty(&gaugepoint::Document::schema()).unwrap()).unwrap();
}
