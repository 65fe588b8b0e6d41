package dev.stayfixed.archive;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.condition.ConditionReason;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.recording.LogReason;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A reason as it is kept: what it says, never the words of a language. */
final class StoredReason {

    /** What a condition and a log can say. */
    private static final Map<String, Kind> KINDS = Stream.<Kind[]>of(
                    Shape.values(),
                    Signal.values(),
                    DriveQuantity.values(),
                    ConditionReason.values(),
                    LogReason.values(),
                    Unit.values())
            .flatMap(Arrays::stream)
            .collect(Collectors.toUnmodifiableMap(Kind::key, Function.identity()));

    /** Reasons that were stored while they were sentences keep their words. */
    private static final String SENTENCE = "old";

    private StoredReason() {}

    /** For what is stored together with reasons. */
    static SimpleModule module() {
        return new SimpleModule()
                .addSerializer(Reason.class, new ValueSerializer<>() {
                    @Override
                    public void serialize(Reason reason, JsonGenerator out, SerializationContext context) {
                        out.writePOJO(node(reason));
                    }
                })
                .addDeserializer(Reason.class, new ValueDeserializer<>() {
                    @Override
                    public Reason deserialize(JsonParser in, DeserializationContext context) {
                        return read(context.readTree(in));
                    }
                });
    }

    static JsonNode node(Part part) {
        return part.match(KEPT);
    }

    private static ObjectNode empty() {
        return JsonNodeFactory.instance.objectNode();
    }

    private static final Part.Cases<JsonNode> KEPT = new Part.Cases<>() {
        @Override
        public JsonNode kind(Kind kind) {
            return empty().put("word", kind.key());
        }

        @Override
        public JsonNode reason(Reason reason) {
            ObjectNode node = empty().put("kind", reason.kind().key());
            reason.parts().forEach(inner -> node.withArray("parts").add(node(inner)));
            return node;
        }

        @Override
        public JsonNode quantity(Quantity quantity) {
            ObjectNode node = empty();
            quantity.beside().ifPresent(limit -> node.put("beside", limit));
            return node.put("value", quantity.value())
                    .put("unit", quantity.unit().name())
                    .put("decimals", quantity.decimals());
        }

        @Override
        public JsonNode count(Part.Count count) {
            return empty().put("count", count.number());
        }

        @Override
        public JsonNode hex(Part.Hex hex) {
            return empty().put("hex", hex.number());
        }

        @Override
        public JsonNode day(Part.Day day) {
            return empty().put("day", day.at().toString());
        }

        @Override
        public JsonNode minute(Part.Minute minute) {
            return empty().put("minute", minute.at().toString());
        }

        @Override
        public JsonNode verbatim(Part.Verbatim own) {
            return empty().put(SENTENCE, own.text());
        }

        @Override
        public JsonNode time(Part.Time time) {
            return empty().put("millis", time.millis()).put("form", time.form().name());
        }

        @Override
        public JsonNode timeOf(Part.TimeOf time) {
            return empty().put("found", time.found()).put("needed", time.needed());
        }
    };

    static Reason read(JsonNode node) {
        if (node.isString()) {
            return Reason.of(Shape.EACH, Part.verbatim(node.asString()));
        }
        return new Reason(
                kind(node.get("kind").asString()),
                node.path("parts").valueStream().map(StoredReason::part).toList());
    }

    private static Part part(JsonNode node) {
        if (node.has("kind")) {
            return read(node);
        }
        if (node.has("word")) {
            return kind(node.get("word").asString());
        }
        if (node.has("millis")) {
            return new Part.Time(
                    node.get("millis").asLong(),
                    Part.Time.Form.valueOf(node.get("form").asString()));
        }
        if (node.has("count")) {
            return Part.count(node.get("count").asLong());
        }
        if (node.has("hex")) {
            return Part.hex(node.get("hex").asInt());
        }
        if (node.has("day")) {
            return new Part.Day(Instant.parse(node.get("day").asString()));
        }
        if (node.has("minute")) {
            return new Part.Minute(Instant.parse(node.get("minute").asString()));
        }
        if (node.has(SENTENCE)) {
            return Part.verbatim(node.get(SENTENCE).asString());
        }
        return node.has("found")
                ? new Part.TimeOf(node.get("found").asLong(), node.get("needed").asLong())
                : quantity(node);
    }

    private static Quantity quantity(JsonNode node) {
        return new Quantity(
                node.get("value").asDouble(),
                Unit.valueOf(node.get("unit").asString()),
                node.get("decimals").asInt(),
                node.has("beside") ? OptionalDouble.of(node.get("beside").asDouble()) : OptionalDouble.empty());
    }

    private static Kind kind(String key) {
        Kind kind = KINDS.get(key);
        if (kind == null) {
            throw new IllegalArgumentException("kind of a reason: found " + key + ", expected one that is kept");
        }
        return kind;
    }
}
