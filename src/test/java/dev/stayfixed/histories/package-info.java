/**
 * Every history that fits a record. {@link dev.stayfixed.histories.Oracle} enumerates them for one fault from what the control units
 * were asked and answered, and says what all of them agree on; {@link dev.stayfixed.histories.UntidyRecords} makes records as they come
 * from real cars, with the truth beside them. Both are written from 13 CCR 1968.2 (d)(2), SAE J1979 and ISO 14229-1 Annex D, and know
 * nothing of the packages that judge. May depend on {@code java.lang}, {@code java.util} and {@code java.time} only; the tests here
 * hold the two against the real rule.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.histories;
