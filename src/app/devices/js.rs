//! Reading loose objects of the browser: what an engine lacks is `None`, never a trap.

use js_sys::{Array, Function, Object, Promise, Reflect};
use leptos::prelude::set_timeout;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// A member that is there and is neither null nor undefined.
pub fn member(object: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(object, &name.into()).ok().filter(|value| !value.is_null() && !value.is_undefined())
}

/// A member that is a finite number.
pub fn number(object: &JsValue, name: &str) -> Option<f64> {
    member(object, name)?.as_f64().filter(|number| number.is_finite())
}

/// A member that is text.
pub fn text(object: &JsValue, name: &str) -> Option<String> {
    member(object, name)?.as_string()
}

/// A member along a path: `navigator.storage.persist`.
pub fn path(object: &JsValue, names: &[&str]) -> Option<JsValue> {
    names.iter().try_fold(object.clone(), |at, name| member(&at, name))
}

/// The window, loosely.
pub fn global() -> JsValue {
    js_sys::global().into()
}

/// A plain object of the members given.
pub fn object(members: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in members {
        // A plain object takes any member.
        drop(Reflect::set(&object, &(*name).into(), value));
    }
    object.into()
}

/// Calls a method that may be missing or may refuse.
pub fn call(object: &JsValue, method: &str, arguments: &[JsValue]) -> Option<JsValue> {
    let method: Function = member(object, method)?.dyn_into().ok()?;
    method.apply(object, &arguments.iter().collect::<Array>()).ok()
}

/// Makes an object of a class that may be missing or may refuse.
pub fn construct(class: &JsValue, arguments: &[JsValue]) -> Result<JsValue, JsValue> {
    let class: &Function = class.dyn_ref().ok_or(JsValue::UNDEFINED)?;
    Reflect::construct(class, &arguments.iter().collect::<Array>())
}

/// Waits for what a method promises.
pub async fn settled(promised: JsValue) -> Result<JsValue, JsValue> {
    match promised.dyn_into::<Promise>() {
        Ok(promise) => JsFuture::from(promise).await,
        Err(plain) => Ok(plain),
    }
}

/// Waits for a promise, but no longer than `patience`.
pub async fn in_time(promise: Promise, patience: core::time::Duration) -> Result<JsValue, JsValue> {
    let timer = Promise::new(&mut |_, reject| {
        // Calling a resolver cannot fail.
        set_timeout(move || drop(reject.call0(&JsValue::NULL)), patience);
    });
    JsFuture::from(Promise::race(&Array::of2(&promise, &timer))).await
}

/// Hands the outcome of a promise to `then`; the promise itself is made now, inside the tap.
pub fn after(promised: JsValue, then: impl FnOnce(Result<JsValue, JsValue>) + 'static) {
    spawn_local(async move { then(settled(promised).await) });
}

/// The name of an error: "AbortError", "NotAllowedError".
pub fn error_name(error: &JsValue) -> String {
    text(error, "name").unwrap_or_default()
}
