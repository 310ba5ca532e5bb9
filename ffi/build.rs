//! Names the shared library after its ABI, so that a loader never pairs a program with another one.

#[path = "src/abi.rs"]
#[expect(unreachable_pub, reason = "the library exports it")]
mod abi;

use std::env::var;

fn main() {
    println!("cargo::rerun-if-changed=src/abi.rs");
    if var("CARGO_CFG_TARGET_OS").as_deref() == Ok("linux") {
        let abi = abi::GAUGEPOINT_ABI;
        println!("cargo::rustc-cdylib-link-arg=-Wl,-soname,libgaugepoint_c.so.{abi}");
    }
}
