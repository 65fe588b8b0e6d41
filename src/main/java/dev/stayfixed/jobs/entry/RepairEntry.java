package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.bench.BenchCheck;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A repair.
 *
 * @param performedAt now, if missing
 * @param faultIds all faults of the job, if missing
 * @param codesCleared service $04 or $14 was sent with the repair; false if missing
 * @param scanBefore pasted answers, read before the repair and before any clear
 * @param scanAfter pasted answers, read after the repair and after the clear
 */
@Schema(name = "RepairRequest")
public record RepairEntry(
        @Nullable Instant performedAt,

        @Nullable @Size(max = 50, message = "at most {max} ids")
        Set<UUID> faultIds,

        @NotBlank(message = "what was done") @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String description,

        @Nullable @Size(max = EntryLimits.PARTS, message = "at most {max} parts")
        List<
                        @NotBlank(message = "the name or the number of a part")
                        @Size(max = EntryLimits.PART, message = "at most {max} characters") String>
                parts,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String technician,

        @Nullable Boolean codesCleared,

        @Nullable @Size(max = EntryLimits.SCAN, message = "at most {max} characters")
        String scanBefore,

        @Nullable @Size(max = EntryLimits.SCAN, message = "at most {max} characters")
        String scanAfter,

        @Nullable @Size(max = EntryLimits.MEASUREMENTS, message = "at most {max} measurements")
        List<@Valid Measured> measurements) {

    /**
     * A bench measurement: the same point before and after the repair, as a number or as OPEN or OVER_LIMIT.
     *
     * @param check OTHER if missing; of a PART, the old one is read before and the new one after
     */
    public record Measured(
            @Nullable BenchCheck check,

            @NotBlank(message = "what was measured") @Size(max = EntryLimits.NAME, message = "at most {max} characters")
            String quantity,

            @Nullable @Size(max = 200, message = "at most {max} characters")
            String point,

            @NotBlank(message = "the unit") @Size(max = 20, message = "at most {max} characters")
            String unit,

            @Nullable Double expectedMin,
            @Nullable Double expectedMax,
            @Schema(types = {"number", "string"}) @Nullable JsonNode before,
            @Schema(types = {"number", "string"}) @Nullable JsonNode after,
            @Nullable Boolean testLeadsVerified) {

        Measurement measurement(String at) {
            return Refused.unless(
                    at + ".expectedMin",
                    () -> new Measurement(
                            check == null ? BenchCheck.OTHER : check,
                            quantity.strip(),
                            Given.optional(point),
                            unit.strip(),
                            Given.optional(expectedMin),
                            Given.optional(expectedMax),
                            reading(at + ".before", before),
                            reading(at + ".after", after),
                            Optional.ofNullable(testLeadsVerified)));
        }

        private static Optional<Measurement.Reading> reading(String at, @Nullable JsonNode node) {
            if (node == null || node.isNull()) {
                return Optional.empty();
            }
            boolean isWord = node.isString() && node.stringValue().matches("OPEN|OVER_LIMIT");
            if (!isWord && !node.isNumber()) {
                throw Refused.content(new Mistake(at, node, "a number, OPEN or OVER_LIMIT"));
            }
            return Optional.of(Refused.unless(
                    at,
                    () -> isWord
                            ? Measurement.Reading.of(node.stringValue())
                            : new Measurement.Value(node.doubleValue())));
        }
    }

    public Set<UUID> faultIdsOrAll() {
        return faultIds == null ? Set.of() : faultIds;
    }

    public Repair.Details details(Instant now) {
        return new Repair.Details(
                Given.past("performedAt", performedAt, now),
                description.strip(),
                parts == null ? List.of() : parts,
                Given.optional(technician),
                Boolean.TRUE.equals(codesCleared),
                Optional.ofNullable(scanBefore).filter(s -> !s.isBlank()),
                Optional.ofNullable(scanAfter).filter(s -> !s.isBlank()),
                measured(measurements));
    }

    static List<Measurement> measured(@Nullable List<Measured> measurements) {
        List<Measured> measured = measurements == null ? List.of() : measurements;
        return IntStream.range(0, measured.size())
                .filter(i -> measured.get(i) != null)
                .mapToObj(i -> measured.get(i).measurement("measurements[" + i + "]"))
                .toList();
    }
}
