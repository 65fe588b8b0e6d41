/**
 * The demo: plays an invented shop's scenario into an empty database, over HTTP, as any client would. Only there with the profile
 * "demo". Open {@link dev.stayfixed.demo.ScenarioPlayer} first. May depend on {@code jobs}, to see whether the database is empty.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.demo;
