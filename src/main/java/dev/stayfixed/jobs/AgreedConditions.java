package dev.stayfixed.jobs;

import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.verification.RecordedConditions.Origin;
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
        return Sha256.hex(text(set));
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
