//! The engine command, driven from outside by python-chess's UCI client.

use sealed_move_tests::{binary, python_script};

#[test]
fn an_outside_client_can_use_it() {
    let binary = binary();
    let said = python_script("uci_client.py", &[binary.to_str().expect("a name")], "");
    assert_eq!(said.trim(), "ok");
}
