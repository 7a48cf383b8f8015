//! IndexedDB: one store of texts by key, written with strict durability.
//!
//! A write is done only when its transaction is complete and flushed to disk; a killed browser loses none that
//! was reported done.

use js_sys::Promise;
use leptos::prelude::window;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbObjectStore, IdbOpenDbRequest, IdbRequest, IdbTransaction};

use super::js;
use super::local::NotKept;

/// Name of the database.
const NAME: &str = "slantlight";

/// Name of its one object store.
const STORE: &str = "records";

/// How long opening may take; some private windows never answer. Our own choice.
const PATIENCE: core::time::Duration = core::time::Duration::from_secs(2);

/// A transaction that only reads.
const READ: &str = "readonly";

/// A transaction that may write.
const READ_AND_WRITE: &str = "readwrite";

/// An open database.
#[derive(Clone, Debug)]
pub struct Database(IdbDatabase);

/// Opens the database, making it the first time.
///
/// # Errors
/// The browser has none, or blocks it.
pub async fn open() -> Result<Database, NotKept> {
    let factory = window().indexed_db().ok().flatten().ok_or(NotKept::Blocked)?;
    let request = factory.open_with_u32(NAME, 1).map_err(|_| NotKept::Blocked)?;
    make_store_when_new(&request);
    let opened = js::in_time(answer(&request), PATIENCE).await.map_err(|_| NotKept::Blocked)?;
    opened.dyn_into().map(Database).map_err(|_| NotKept::Blocked)
}

impl Database {
    /// Writes `text` under `key`; returns when it is on the disk.
    ///
    /// # Errors
    /// Storage is full, or was taken away.
    pub async fn write(&self, key: &str, text: &str) -> Result<(), NotKept> {
        let (transaction, store) = self.store(READ_AND_WRITE)?;
        store.put_with_key(&text.into(), &key.into()).map_err(|why| refusal(&why))?;
        complete(&transaction).await
    }

    /// Forgets what is under `key`.
    ///
    /// # Errors
    /// Storage was taken away.
    pub async fn forget(&self, key: &str) -> Result<(), NotKept> {
        let (transaction, store) = self.store(READ_AND_WRITE)?;
        store.delete(&key.into()).map_err(|_| NotKept::Blocked)?;
        complete(&transaction).await
    }

    /// Reads the text under `key`.
    ///
    /// # Errors
    /// Storage was taken away.
    pub async fn read(&self, key: &str) -> Result<Option<String>, NotKept> {
        let (_, store) = self.store(READ)?;
        let request = store.get(&key.into()).map_err(|_| NotKept::Blocked)?;
        done(&request).await.map(|text| text.as_string()).map_err(|_| NotKept::Blocked)
    }

    /// All keys.
    ///
    /// # Errors
    /// Storage was taken away.
    pub async fn keys(&self) -> Result<Vec<String>, NotKept> {
        let (_, store) = self.store(READ)?;
        let request = store.get_all_keys().map_err(|_| NotKept::Blocked)?;
        let keys = done(&request).await.map_err(|_| NotKept::Blocked)?;
        Ok(js_sys::Array::from(&keys).iter().filter_map(|key| key.as_string()).collect())
    }

    /// The object store, within a new transaction of strict durability.
    fn store(&self, mode: &str) -> Result<(IdbTransaction, IdbObjectStore), NotKept> {
        // Called loosely: the bindings count the options among the unstable ones, engines have had them for years.
        let strict = js::object(&[("durability", "strict".into())]);
        let transaction = js::call(&self.0, "transaction", &[STORE.into(), mode.into(), strict]);
        let transaction: IdbTransaction =
            transaction.and_then(|made| made.dyn_into().ok()).ok_or(NotKept::Blocked)?;
        let store = transaction.object_store(STORE).map_err(|_| NotKept::Blocked)?;
        Ok((transaction, store))
    }
}

/// Engines refuse what does not fit at once, or when the transaction ends.
fn refusal(why: &JsValue) -> NotKept {
    if js::error_name(why) == "QuotaExceededError" { NotKept::Full } else { NotKept::Blocked }
}

/// Makes the object store in a database that did not exist.
fn make_store_when_new(request: &IdbOpenDbRequest) {
    let opening = request.clone();
    let upgrade = Closure::once_into_js(move || {
        let database: Option<IdbDatabase> = opening.result().ok().and_then(|opened| opened.dyn_into().ok());
        if let Some(database) = database {
            // Fails only if the store is there already, which is what we want.
            drop(database.create_object_store(STORE));
        }
    });
    request.set_onupgradeneeded(Some(upgrade.unchecked_ref()));
}

/// What a request brings.
async fn done(request: &IdbRequest) -> Result<JsValue, JsValue> {
    JsFuture::from(answer(request)).await
}

/// A promise of what a request brings.
fn answer(request: &IdbRequest) -> Promise {
    let waiting = request.clone();
    Promise::new(&mut |resolve, reject| {
        let finished = waiting.clone();
        let success = Closure::once_into_js(move || {
            // The promise takes the result; calling a resolver cannot fail.
            drop(resolve.call1(&JsValue::NULL, &finished.result().unwrap_or(JsValue::UNDEFINED)));
        });
        waiting.set_onsuccess(Some(success.unchecked_ref()));
        waiting.set_onerror(Some(&reject));
    })
}

/// Waits until a transaction is on the disk. One that is aborted ran out of room, or was taken away.
async fn complete(transaction: &IdbTransaction) -> Result<(), NotKept> {
    let waiting = transaction.clone();
    let ended = JsFuture::from(Promise::new(&mut |resolve, reject| {
        waiting.set_oncomplete(Some(&resolve));
        waiting.set_onabort(Some(&reject));
        waiting.set_onerror(Some(&reject));
    }))
    .await;
    ended.map(drop).map_err(|_| NotKept::Full)
}
