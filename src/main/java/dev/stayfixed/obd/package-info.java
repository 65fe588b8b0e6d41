/**
 * The standards: what a control unit's answer says, from SAE J1979, SAE J2012 and ISO 14229-1. Pure: bytes or text go in, a value
 * or one {@link dev.stayfixed.obd.ObdFormatException} comes out. Open {@link dev.stayfixed.obd.TroubleCode} first, then
 * {@link dev.stayfixed.obd.Scan}. May depend on nothing but {@code java.lang}, {@code java.util} and {@code java.time}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.obd;
