/**
 * What an inspection would likely say: advisory only, by named and dated rules. The local rule governs. Open
 * {@link dev.stayfixed.verification.inspection.InspectionRule} first. Pure; may depend on {@code obd}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.verification.inspection;
