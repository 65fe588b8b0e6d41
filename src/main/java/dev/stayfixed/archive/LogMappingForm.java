package dev.stayfixed.archive;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.recording.ColumnMapping;
import dev.stayfixed.recording.DecimalMark;
import dev.stayfixed.recording.LogMapping;
import dev.stayfixed.recording.SourceUnit;
import dev.stayfixed.recording.TimeFormat;
import dev.stayfixed.wording.Wording;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * How to read a log, as it is written: in the API and in the row. This form is stored for good: a field may be added.
 *
 * @param dateColumn the header of a column with the date alone, where the time column holds the time of day alone; else left out
 * @param separator between the cells of the log with which it was confirmed; another one is asked about
 * @param confirmedFor the vehicle whose log it was confirmed with: where the headers do not tell the units, a log of another vehicle is
 *     asked about
 */
public record LogMappingForm(
        @NotBlank(message = "the header of the time column") @Size(max = 4096)
        String timeColumn,

        @NotNull(message = "how the time is written") TimeFormat timeFormat,
        @NotNull(message = "POINT or COMMA") DecimalMark decimalMark,

        @NotEmpty(message = "at least one column with a signal") @Size(max = 100, message = "at most 100 columns")
        List<@Valid Column> columns,

        @Nullable @Size(max = 4096) String dateColumn,
        @Nullable @Size(max = 1) String separator,
        @Nullable UUID confirmedFor) {

    /** A column with its signal and unit. */
    public record Column(
            @NotBlank(message = "the header of the column") @Size(max = 4096)
            String header,

            @NotNull(message = "a signal") Signal signal,
            @NotNull(message = "a unit") SourceUnit unit) {}

    public static LogMappingForm of(LogMapping mapping) {
        return new LogMappingForm(
                mapping.timeColumn(),
                mapping.timeFormat(),
                mapping.decimalMark(),
                mapping.columns().stream()
                        .map(c -> new Column(c.header(), c.signal(), c.unit()))
                        .toList(),
                mapping.dateColumn().orElse(null),
                null,
                null);
    }

    public LogMappingForm with(@Nullable String separates, @Nullable UUID vehicleId) {
        return new LogMappingForm(timeColumn, timeFormat, decimalMark, columns, dateColumn, separates, vehicleId);
    }

    /**
     * The mapping itself.
     *
     * @param at where it stands in the body, such as "mapping"
     * @throws Refused where a unit does not fit its signal, or a signal stands twice
     */
    public LogMapping facts(String at) {
        List<ColumnMapping> each = IntStream.range(0, columns.size())
                .mapToObj(i -> Refused.unless(
                        at + ".columns[" + i + "]",
                        () -> new ColumnMapping(
                                columns.get(i).header(),
                                columns.get(i).signal(),
                                columns.get(i).unit())))
                .toList();
        if (dateColumn != null && !timeFormat.hasDate()) {
            throw Refused.content(Mistake.said(
                    at + "/columns",
                    "time format: found \"" + Wording.METRIC.words(timeFormat)
                            + "\" with a column for the date, expected one with a date"));
        }
        return Refused.unless(
                at + ".columns",
                () -> new LogMapping(timeColumn, Optional.ofNullable(dateColumn), timeFormat, decimalMark, each));
    }
}
