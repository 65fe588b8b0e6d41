/** Measurements that are run by hand; {@code DEVELOPERS.md} states what they gave. */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.bench;
