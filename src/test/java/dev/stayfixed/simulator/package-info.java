/**
 * A vehicle that plays the engine computer's side of the rules: monitors, pending, confirmed and permanent codes, readiness, counters,
 * test results. It is the second opinion of the tests: written from 13 CCR 1968.2, SAE J1979 and ISO 14229-1 Annex D, it knows nothing
 * of the packages that judge, and encodes its answers itself. Open {@link dev.stayfixed.simulator.Car} first, then
 * {@link dev.stayfixed.simulator.CodeState} for the rules of one code. May depend on {@code java.lang}, {@code java.util} and
 * {@code java.time} only; {@code SampleScenario} also writes JSON.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.simulator;
