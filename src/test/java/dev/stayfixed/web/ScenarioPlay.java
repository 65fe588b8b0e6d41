package dev.stayfixed.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Plays a scenario over HTTP, with a vehicle and a job of its own. */
final class ScenarioPlay {

    private static final String API = "/api/v1";

    private final Client client;
    private final Consumer<Duration> passTime;
    private final List<String> wrong = new ArrayList<>();
    private final List<JsonNode> answers = new ArrayList<>();
    private final List<JsonNode> drives = new ArrayList<>();
    private String vehicle = "";
    private String job = "";

    /** @param passTime lets the service's clock go on */
    ScenarioPlay(Client client, Consumer<Duration> passTime) {
        this.client = client;
        this.passTime = passTime;
    }

    /** What there is to see after the last step. */
    ScenarioFindings play(Scenario scenario) {
        JsonNode said = scenario.said();
        vehicle = client.post(API + "/vehicles", said.at("/vehicle").toString())
                .is(201)
                .id();
        ObjectNode opening = (ObjectNode) said.at("/job").deepCopy();
        opening.put("vehicleId", vehicle);
        Answer opened = client.post(API + "/jobs", opening.toString()).is(201);
        job = opened.id();
        said.at("/steps").forEach(this::step);
        List<JsonNode> heard = new ArrayList<>();
        client.get(API + "/inbox?limit=200").is(200).json().at("/items").forEach(event -> {
            if (event.at("/jobId").asString("").equals(job)) {
                heard.add(event);
            }
        });
        List<JsonNode> groups = new ArrayList<>();
        said.at("/expect").findValues("codeGroup").forEach(asked -> groups.add(code(asked)));
        return new ScenarioFindings(
                client.get(API + "/jobs/" + job + "/verdicts").is(200).json(),
                client.get(API + "/jobs/" + job + "/next-drive").is(200).json(),
                heard,
                groups,
                answers,
                drives,
                wrong);
    }

    private JsonNode code(JsonNode asked) {
        return client.get(API + "/codes/" + asked.at("/code").asString() + "?ignition="
                        + asked.at("/ignition").asString("SPARK"))
                .is(200)
                .json();
    }

    private void step(JsonNode step) {
        String kind = step.propertyNames().stream()
                .filter(List.of("repair", "drive", "text", "log", "conditions", "correctRepair")::contains)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a step of no known kind: " + step));
        JsonNode body = step.get(kind);
        String toDrives = API + "/vehicles/" + vehicle + "/drives";
        Answer answer = switch (kind) {
            case "repair" -> client.post(API + "/jobs/" + job + "/repairs", repair(step));
            case "drive" -> client.post(toDrives, body.toString());
            case "text" -> {
                passTime.accept(Duration.ofMillis(step.at("/waitMillis").asLong(0)));
                yield client.postText(toDrives, body.asString());
            }
            case "log" -> client.send("POST", toDrives, RecordedDrive.FORM, log(body));
            case "conditions" -> client.post(conditionsAddress(body), without(body, "fault"));
            default -> corrected(body);
        };
        boolean isDrive = List.of("drive", "text", "log").contains(kind);
        boolean isFair = answer.status() < 300
                || (answer.status() < 500 && step.at("/mayBeRefused").asBoolean(false));
        if (!isFair) {
            wrong.add("the step " + step + " was refused with " + answer.status() + ": " + answer.body());
        }
        JsonNode read = answer.json();
        answers.add(read);
        if (isDrive) {
            drives.add(read);
        }
    }

    private String repair(JsonNode step) {
        ObjectNode body = (ObjectNode) step.get("repair").deepCopy();
        if (step.has("faults")) {
            var ids = body.putArray("faultIds");
            step.get("faults").forEach(place -> ids.add(faultId(place.asInt())));
        }
        return body.toString();
    }

    private String faultId(int place) {
        return see().at("/faults/" + place + "/id");
    }

    private Answer see() {
        return client.get(API + "/jobs/" + job).is(200);
    }

    private String conditionsAddress(JsonNode body) {
        return API + "/jobs/" + job + "/faults/" + faultId(body.at("/fault").asInt(0)) + "/conditions";
    }

    private static String without(JsonNode body, String field) {
        ObjectNode copy = (ObjectNode) body.deepCopy();
        copy.remove(field);
        return copy.toString();
    }

    private static byte[] log(JsonNode body) {
        return RecordedDrive.form(
                body.at("/csv").asString().getBytes(StandardCharsets.UTF_8),
                body.has("drive") ? body.get("drive").toString() : "{}");
    }

    private Answer corrected(JsonNode body) {
        Answer seen = see();
        String repair = seen.at("/repairs/" + body.at("/repair").asInt(0) + "/id");
        ObjectNode said = JsonMapper.shared().createObjectNode();
        said.set("performedAt", body.get("performedAt"));
        return client.put(API + "/jobs/" + job + "/repairs/" + repair, said.toString(), "If-Match", seen.etag());
    }
}
