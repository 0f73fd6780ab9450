//! The folders of languages are part of the library: a file that is new there makes it anew.

fn main() {
    println!("cargo::rerun-if-changed=ftl");
}
