package dev.stayfixed.reports;

import java.time.Instant;
import java.util.UUID;

/**
 * A report that left the house.
 *
 * @param pdf the very bytes
 * @param pdfDigest their SHA-256 in hex
 */
@SuppressWarnings("ArrayRecordComponent") // stored and passed on, never compared
public record IssuedReport(
        UUID jobId, Fingerprint fingerprint, Instant issuedAt, ReportFacts facts, String pdfDigest, byte[] pdf) {}
