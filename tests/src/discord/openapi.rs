//! Checks each request against Discord's own OpenAPI description, where that file is at hand.
//!
//! One relaxation: an id may be a number. The description wants text, but Discord's page on uploading
//! files writes `"attachments": [{"id": 0, …}]`, as the client library does, and the service takes both.

use std::{
    collections::{BTreeMap, BTreeSet},
    path::{Path, PathBuf},
    sync::{Arc, Mutex, OnceLock},
};

use jsonschema::Validator;
use serde_json::{Map, Value, json};

/// The description, with the checkers built so far.
#[derive(Clone)]
pub struct OpenApi(Arc<Inner>);

struct Inner {
    document: Value,
    built: Mutex<BTreeMap<String, Arc<Validator>>>,
}

impl std::fmt::Debug for OpenApi {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("OpenApi")
    }
}

/// Where the description is looked for: `SEALED_MOVE_DISCORD_OPENAPI`, else `shared/discord-openapi.json`
/// beside the repository.
pub fn path() -> PathBuf {
    std::env::var_os("SEALED_MOVE_DISCORD_OPENAPI").map_or_else(
        || {
            let repository = Path::new(env!("CARGO_MANIFEST_DIR")).parent();
            repository
                .and_then(Path::parent)
                .unwrap_or(Path::new("/"))
                .join("shared/discord-openapi.json")
        },
        PathBuf::from,
    )
}

impl OpenApi {
    /// The description, read once a process; `None` where there is no file.
    ///
    /// # Panics
    /// When there is a file and it is not JSON: then something is wrong that should not be passed over.
    pub fn load() -> Option<Self> {
        static LOADED: OnceLock<Option<OpenApi>> = OnceLock::new();
        LOADED
            .get_or_init(|| {
                let bytes = std::fs::read(path()).ok()?;
                let mut document: Value = match serde_json::from_slice(&bytes) {
                    Ok(document) => document,
                    Err(error) => panic!("{} is not JSON: {error}", path().display()),
                };
                document["components"]["schemas"]["SnowflakeType"] = json!({
                    "oneOf": [
                        {"type": "string", "pattern": "^(0|[1-9][0-9]*)$"},
                        {"type": "integer", "minimum": 0},
                    ],
                });
                Some(Self(Arc::new(Inner {
                    document,
                    built: Mutex::default(),
                })))
            })
            .clone()
    }

    /// What is wrong with a request; empty when nothing is.
    pub fn check(
        &self,
        method: &str,
        path: &str,
        query: &str,
        body: Option<&Value>,
    ) -> Vec<String> {
        let Some((template, operations)) = self.find(path) else {
            return vec![format!("{method} {path}: no such path is described")];
        };
        let Some(operation) = operations.get(method.to_lowercase()) else {
            return vec![format!("{method} {template}: no such method is described")];
        };
        let mut wrong = Vec::new();
        let named: BTreeSet<&str> = ["parameters"]
            .iter()
            .flat_map(|key| [operations.get(*key), operation.get(*key)])
            .flatten()
            .filter_map(Value::as_array)
            .flatten()
            .filter(|parameter| parameter["in"] == "query")
            .filter_map(|parameter| parameter["name"].as_str())
            .collect();
        for pair in query.split('&').filter(|pair| !pair.is_empty()) {
            let name = pair.split('=').next().unwrap_or_default();
            if !named.contains(name) {
                wrong.push(format!(
                    "{method} {template}: no query parameter \"{name}\""
                ));
            }
        }
        let schema = &operation["requestBody"]["content"]["application/json"]["schema"];
        match (schema.is_null(), body) {
            (true, Some(body)) if !body.is_null() => {
                wrong.push(format!("{method} {template}: no body is described"));
            }
            (false, Some(body)) => {
                let validator = self.validator(&format!("{method} {template}"), schema);
                wrong.extend(validator.iter_errors(body).map(|error| {
                    format!(
                        "{method} {template}: {error} at \"{}\" in {body}",
                        error.instance_path()
                    )
                }));
            }
            (false, None) if operation["requestBody"]["required"] == true => {
                wrong.push(format!("{method} {template}: a body is required"));
            }
            _ => {}
        }
        wrong
    }

    /// The described path that fits; one with fewer placeholders goes first (`/users/@me`).
    fn find(&self, path: &str) -> Option<(&str, &Value)> {
        let parts: Vec<&str> = path.split('/').collect();
        self.0.document["paths"]
            .as_object()?
            .iter()
            .filter(|(template, _)| {
                let wanted: Vec<&str> = template.split('/').collect();
                wanted.len() == parts.len()
                    && wanted
                        .iter()
                        .zip(&parts)
                        .all(|(want, part)| want.starts_with('{') || want == part)
            })
            .min_by_key(|(template, _)| template.matches('{').count())
            .map(|(template, operations)| (template.as_str(), operations))
    }

    fn validator(&self, name: &str, schema: &Value) -> Arc<Validator> {
        let mut built = match self.0.built.lock() {
            Ok(built) => built,
            Err(poisoned) => poisoned.into_inner(),
        };
        built
            .entry(name.to_string())
            .or_insert_with(|| {
                let mut whole = schema.clone();
                whole["$schema"] = json!("https://json-schema.org/draft/2020-12/schema");
                whole["components"] = json!({"schemas": self.reachable(schema)});
                match jsonschema::options().build(&whole) {
                    Ok(validator) => Arc::new(validator),
                    Err(error) => panic!("the schema of {name} cannot be used: {error}"),
                }
            })
            .clone()
    }

    /// The schemas that `schema` refers to, directly or not; the rest would only cost time.
    fn reachable(&self, schema: &Value) -> Map<String, Value> {
        let all = &self.0.document["components"]["schemas"];
        let mut out = Map::new();
        let mut todo = vec![schema];
        while let Some(at) = todo.pop() {
            match at {
                Value::Object(map) => {
                    if let Some(name) = map
                        .get("$ref")
                        .and_then(Value::as_str)
                        .and_then(|text| text.strip_prefix("#/components/schemas/"))
                        && !out.contains_key(name)
                    {
                        out.insert(name.to_string(), all[name].clone());
                        todo.push(&all[name]);
                    }
                    todo.extend(map.values());
                }
                Value::Array(items) => todo.extend(items),
                _ => {}
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_faults_where_the_description_is_at_hand() {
        let Some(openapi) = OpenApi::load() else {
            eprintln!(
                "{} is not there; nothing to check against",
                path().display()
            );
            return;
        };
        let check = |body: Value| openapi.check("POST", "/channels/1/messages", "", Some(&body));
        assert_eq!(
            check(json!({"content": "x", "nonce": "n", "enforce_nonce": true})),
            Vec::<String>::new()
        );
        assert_eq!(check(json!({"content": 5})).len(), 1);
        assert_eq!(check(json!({"nonce": "x".repeat(26)})).len(), 1);
        assert_eq!(
            openapi.check("GET", "/channels/1/nonsense", "", None).len(),
            1
        );
        assert_eq!(
            openapi
                .check("GET", "/channels/1/messages", "after=1&limit=5", None)
                .len(),
            0
        );
        assert_eq!(
            openapi
                .check("GET", "/channels/1/messages", "since=1", None)
                .len(),
            1
        );
    }
}
