package dev.stayfixed.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * What a played scenario led to, and how that is held against what was expected.
 *
 * @param verdicts the answer of GET verdicts at the end
 * @param plan the answer of GET next-drive at the end
 * @param inbox the events of this job
 * @param codes what the service says of the codes that were asked about
 * @param answers one for each step
 * @param drives the answers to the drives among the steps
 * @param refused steps that were refused and must not be
 */
record ScenarioFindings(
        JsonNode verdicts,
        JsonNode plan,
        List<JsonNode> inbox,
        List<JsonNode> codes,
        List<JsonNode> answers,
        List<JsonNode> drives,
        List<String> refused) {

    /** Said of the last drive: a word for the malfunction indicator lamp. */
    private static final Pattern LAMP = Pattern.compile("(?i)\\b(lamp|MIL)\\b");

    private static final Set<String> ENTRIES = Set.of(
            "fault",
            "allowed",
            "never",
            "drive",
            "outcomeNot",
            "reasonNot",
            "nextNot",
            "planNot",
            "saysRegex",
            "lampShown",
            "codeGroup",
            "anyOf");

    /** What is not as argued, each in a sentence with what was expected and what was found; empty where all is. */
    List<String> wrong(JsonNode expected) {
        List<String> wrong = new ArrayList<>(refused);
        expected.forEach(entry -> wrong.addAll(wrongEntry(entry)));
        return wrong;
    }

    private List<String> wrongEntry(JsonNode entry) {
        entry.propertyNames().stream().filter(name -> !ENTRIES.contains(name)).forEach(name -> {
            throw new IllegalArgumentException("an expectation of no known kind: " + name);
        });
        List<String> wrong = new ArrayList<>();
        JsonNode fault = verdicts.at("/faults/" + entry.at("/fault").asInt(0));
        if (entry.has("allowed")) {
            states(entry, fault, wrong);
        }
        if (entry.has("never")) {
            never(entry, fault, wrong);
        }
        if (entry.has("drive")) {
            ofDrive(entry, fault, wrong);
        }
        if (entry.has("nextNot")) {
            unwanted(
                    "the next step",
                    entry,
                    "nextNot",
                    Stream.of(fault.at("/next").asString("")),
                    wrong);
        }
        if (entry.has("planNot")) {
            unwanted("the plan", entry, "planNot", plan(fault.at("/code").asString()), wrong);
        }
        if (entry.has("saysRegex")) {
            says(entry, wrong);
        }
        if (entry.has("lampShown") && !isLampShown(fault)) {
            wrong.add("expected a word of the lamp for the last drive, found none in " + lampSaid(fault));
        }
        if (entry.has("codeGroup")) {
            group(entry.get("codeGroup"), wrong);
        }
        if (entry.has("anyOf")) {
            any(entry.get("anyOf"), wrong);
        }
        return wrong;
    }

    private static String state(JsonNode fault) {
        return fault.at("/standing/state").asString("");
    }

    private static void states(JsonNode entry, JsonNode fault, List<String> wrong) {
        Set<String> allowed = words(entry.get("allowed"));
        if (!allowed.contains(state(fault))) {
            wrong.add("%s: expected %s at the end, found %s"
                    .formatted(fault.at("/code").asString(""), allowed, state(fault)));
        }
    }

    private void never(JsonNode entry, JsonNode fault, List<String> wrong) {
        Set<String> never = words(entry.get("never"));
        if (never.contains(state(fault))) {
            wrong.add("expected never %s, found %s at the end".formatted(never, state(fault)));
        }
        for (int i = 0; i < drives.size(); i++) {
            for (JsonNode effect : drives.get(i).at("/effects")) {
                String state = effect.at("/standing/state").asString("");
                if (effect.at("/faultId").equals(fault.at("/faultId")) && never.contains(state)) {
                    wrong.add("expected never %s, found %s after drive %d".formatted(never, state, i));
                }
            }
        }
    }

    private static Set<String> words(JsonNode list) {
        Set<String> words = new TreeSet<>();
        list.forEach(word -> words.add(word.asString()));
        return words;
    }

    private void ofDrive(JsonNode entry, JsonNode fault, List<String> wrong) {
        int place = entry.at("/drive").asInt();
        List<JsonNode> judged = steps(fault, drives.get(place).at("/id").asString("")).stream()
                .filter(step -> step.at("/kind").asString("").equals("JUDGED"))
                .toList();
        if (entry.has("outcomeNot")) {
            Set<String> not = words(entry.get("outcomeNot"));
            judged.stream()
                    .map(step -> step.at("/outcome").asString(""))
                    .filter(not::contains)
                    .forEach(
                            found -> wrong.add("drive %d: expected none of %s, found %s".formatted(place, not, found)));
        }
        if (entry.has("reasonNot")) {
            unwanted(
                    "the reason of drive " + place,
                    entry,
                    "reasonNot",
                    judged.stream().map(step -> step.at("/reason").asString("")),
                    wrong);
        }
    }

    private static List<JsonNode> steps(JsonNode fault, String driveId) {
        List<JsonNode> steps = new ArrayList<>();
        fault.at("/attempts")
                .forEach(attempt -> attempt.at("/steps").forEach(step -> {
                    if (!driveId.isEmpty() && step.at("/driveId").asString("").equals(driveId)) {
                        steps.add(step);
                    }
                }));
        return steps;
    }

    private static void unwanted(String where, JsonNode entry, String name, Stream<String> said, List<String> wrong) {
        Pattern not = Pattern.compile(entry.get(name).asString());
        said.filter(sentence -> not.matcher(sentence).find())
                .forEach(sentence ->
                        wrong.add("%s: expected nothing like \"%s\", found \"%s\"".formatted(where, not, sentence)));
    }

    private Stream<String> plan(String code) {
        List<String> lines = new ArrayList<>();
        plan.at("/plans").forEach(drive -> {
            if (words(drive.at("/faults")).stream().anyMatch(fault -> fault.contains(code))) {
                lines.addAll(texts(drive.at("/lines")));
            }
        });
        return lines.stream();
    }

    private void says(JsonNode entry, List<String> wrong) {
        Pattern wanted = Pattern.compile(entry.get("saysRegex").asString());
        List<String> said = new ArrayList<>();
        Stream.of(answers.stream(), Stream.of(verdicts), inbox.stream())
                .flatMap(nodes -> nodes)
                .forEach(node -> said.addAll(texts(node)));
        if (said.stream().noneMatch(sentence -> wanted.matcher(sentence).find())) {
            wrong.add("expected a sentence like \"%s\", found only %s".formatted(wanted, said));
        }
    }

    private boolean isLampShown(JsonNode fault) {
        return fault.at("/memory/mil/present").asBoolean(false)
                || lampSaid(fault).stream()
                        .anyMatch(sentence -> LAMP.matcher(sentence).find());
    }

    /** Where a lamp that was reported with the last drive can show. */
    private List<String> lampSaid(JsonNode fault) {
        JsonNode last = drives.get(drives.size() - 1);
        List<String> said = new ArrayList<>();
        steps(fault, last.at("/id").asString("")).forEach(step -> said.addAll(texts(step)));
        said.addAll(texts(last.at("/warnings")));
        said.addAll(texts(last.at("/effects")));
        inbox.forEach(event -> said.addAll(texts(event)));
        return said;
    }

    private void group(JsonNode asked, List<String> wrong) {
        String code = asked.at("/code").asString();
        String expected = asked.at("/group").asString();
        codes.stream()
                .filter(found -> found.at("/code").asString("").equals(code))
                .map(found -> found.at("/group").asString(""))
                .filter(found -> !found.equals(expected))
                .forEach(found ->
                        wrong.add("%s: expected the monitor group %s, found %s".formatted(code, expected, found)));
    }

    private void any(JsonNode entries, List<String> wrong) {
        List<String> each = new ArrayList<>();
        for (JsonNode entry : entries) {
            List<String> found = wrongEntry(entry);
            if (found.isEmpty()) {
                return;
            }
            each.addAll(found);
        }
        wrong.add("expected at least one of several, found none: " + each);
    }

    /** Every text in it, those of scans left out: they repeat what was sent. */
    private static List<String> texts(JsonNode node) {
        List<String> texts = new ArrayList<>();
        collect(node, texts);
        return texts;
    }

    private static void collect(JsonNode node, List<String> texts) {
        if (node.isString()) {
            texts.add(node.asString());
        } else if (node.isArray()) {
            node.forEach(part -> collect(part, texts));
        } else if (node.isObject()) {
            for (Map.Entry<String, JsonNode> property : node.properties()) {
                if (!property.getKey().startsWith("scan")) {
                    collect(property.getValue(), texts);
                }
            }
        }
    }
}
