package dev.stayfixed.jobs;

import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.verification.RecordedConditions.Origin;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import tools.jackson.databind.json.JsonMapper;

/**
 * What the recorded signals of a drive are held against for a fault.
 *
 * @param source which service information, in the shop's words; may be empty
 */
public record AgreedConditions(ConditionSet set, Origin origin, String source) {

    private static final JsonMapper JSON = JsonMapper.shared();

    /** The set without its name. */
    record Content(boolean inOrder, List<ConditionForm> conditions) {}

    /** The same for the same conditions, whatever they are called. SHA-256 in hex. */
    public static String key(ConditionSet set) {
        try {
            byte[] content = text(set).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }

    static String text(ConditionSet set) {
        return JSON.writeValueAsString(new Content(
                set.inOrder(), set.conditions().stream().map(ConditionForm::of).toList()));
    }

    static ConditionSet read(String name, String text) {
        Content content = JSON.readValue(text, Content.class);
        return new ConditionSet(
                name,
                content.inOrder(),
                content.conditions().stream().map(ConditionForm::facts).toList());
    }
}
