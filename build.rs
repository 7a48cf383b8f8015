//! Has the web build keep the linker's relocations, along which `part` in `dev` cuts the app in two.
//!
//! `cut` is set where it is: in an optimized build for the browser. Under `./dev serve`, and natively, nothing is cut.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rustc-check-cfg=cfg(cut)");
    let is = |name, value| std::env::var(name).is_ok_and(|found| found == value);
    if is("CARGO_CFG_TARGET_ARCH", "wasm32") && is("PROFILE", "release") {
        println!("cargo::rustc-cfg=cut");
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
    }
}
