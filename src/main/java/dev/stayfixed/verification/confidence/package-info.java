/**
 * More than two trips: how much a number of clean trips proves about a fault that failed only now and then. Open
 * {@link dev.stayfixed.verification.confidence.Intermittence} first. Pure; may depend on a statistics library beside what the other
 * pure packages may.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.verification.confidence;
