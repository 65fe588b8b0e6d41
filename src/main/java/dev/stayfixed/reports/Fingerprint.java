package dev.stayfixed.reports;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * SHA-256 over the canonical JSON (RFC 8785) of the facts of a report, in lower-case hex. The facts hold whole numbers and text only,
 * so that sorted keys and no blanks make the form canonical.
 */
public record Fingerprint(String hex) {

    private static final JsonMapper CANONICAL = JsonMapper.builder()
            .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .changeDefaultPropertyInclusion(inclusion -> inclusion.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    public Fingerprint {
        if (!hex.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("fingerprint: found " + hex.length()
                    + " characters, expected the 64 hexadecimal digits that are printed on the report");
        }
    }

    /** Reads what somebody typed from paper: blanks, hyphens and capitals do not matter. */
    public static Fingerprint typed(String text) {
        try {
            return new Fingerprint(bare(text));
        } catch (IllegalArgumentException e) {
            throw new Refused(ProblemType.INVALID_PARAMETER, String.valueOf(e.getMessage()));
        }
    }

    /** Without the blanks, hyphens and capitals of a person who typed it. */
    public static String bare(String typed) {
        return typed.replaceAll("[\\s-]", "").toLowerCase(Locale.ROOT);
    }

    static Fingerprint of(ReportFacts facts) {
        return of(canonical(facts).getBytes(StandardCharsets.UTF_8));
    }

    static Fingerprint of(byte[] bytes) {
        return new Fingerprint(Sha256.hex(bytes));
    }

    static String canonical(ReportFacts facts) {
        return CANONICAL.writeValueAsString(facts);
    }

    static ReportFacts facts(String canonical) {
        return CANONICAL.readValue(canonical, ReportFacts.class);
    }

    /** In groups of eight, to be read aloud or typed. */
    public String inGroups() {
        return hex.replaceAll("(.{8})(?!$)", "$1 ");
    }
}
