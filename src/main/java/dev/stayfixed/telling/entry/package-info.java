/**
 * What people and programs write of who is told what: each thing in one record with its limits, which the REST interface reads from JSON
 * and the pages from forms. Open {@link dev.stayfixed.telling.entry.ShopNoticesEntry} first.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.entry;
