package dev.stayfixed.recording;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read on the short way is what the careful way reads, to the last bit. Seeded. */
class PlainCellTest {

    private static final String NUMBER_SIGNS = "0123456789.,-+eE xF%٣";
    private static final String[] PIECES = {
        "",
        "-",
        "--",
        "+",
        ".",
        ",",
        "e5",
        "E-3",
        " ",
        "0x1F",
        "rpm",
        " km/h",
        "°C",
        "%",
        "NaN",
        "Infinity",
        "1d",
        "007",
        "0"
    };
    private static final String[] CSV_PIECES = {
        "1",
        "12.5",
        ",",
        ",",
        ";",
        "\n",
        "\r\n",
        "\r",
        "\"",
        "\"a,b\"",
        "\"\"",
        " ",
        "x",
        "\n\n",
        "\"c\nd\"",
        " \"e\" ",
        "\t",
        "#"
    };

    private static double plain(String text, DecimalMark mark) {
        return PlainCell.number(text.toCharArray(), 0, text.length(), mark);
    }

    private static String number(Random random) {
        return switch (random.nextInt(5)) {
            case 0 -> String.format(Locale.ROOT, "%." + random.nextInt(6) + "f", random.nextGaussian() * 2_000);
            case 1 -> String.valueOf(random.nextInt(20_000) - 5_000).replace('.', ',');
            case 2 -> {
                StringBuilder text = new StringBuilder();
                for (int i = random.nextInt(22); i >= 0; i--) {
                    text.append(NUMBER_SIGNS.charAt(random.nextInt(random.nextBoolean() ? 13 : NUMBER_SIGNS.length())));
                }
                yield text.toString();
            }
            case 3 ->
                PIECES[random.nextInt(PIECES.length)] + random.nextInt(1_000) + PIECES[random.nextInt(PIECES.length)];
            default -> random.nextLong() + "." + random.nextInt(100);
        };
    }

    @ParameterizedTest
    @EnumSource(DecimalMark.class)
    void numbersAgree(DecimalMark mark) {
        Random random = new Random(5);
        int read = 0;
        for (int i = 0; i < 200_000; i++) {
            String text = number(random);
            String cell = mark == DecimalMark.COMMA && random.nextBoolean() ? text.replace('.', ',') : text;
            double plain = plain(cell, mark);
            if (!Double.isNaN(plain)) {
                read++;
                assertThat(Double.doubleToLongBits(plain))
                        .as("%s with %s", cell, mark)
                        .isEqualTo(Double.doubleToLongBits(mark.parse(cell)));
            }
        }
        assertThat(read).isGreaterThan(40_000);
    }

    @ParameterizedTest
    @CsvSource({"0", "-0", "7", "007", "-12.5", "0.1", "123456789012345", "12345678.9012345", "0.00000000000001"})
    void usual_numbers_are_read_the_short_way(String text) {
        assertThat(Double.doubleToLongBits(plain(text, DecimalMark.POINT)))
                .isEqualTo(Double.doubleToLongBits(Double.parseDouble(text)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "1.",
                ".5",
                "+1",
                "1e3",
                "1,5",
                "1 ",
                "--1",
                "1.2.3",
                "1234567890123456",
                "٣",
                "NaN"
            })
    void unusual_numbers_are_left_to_the_careful_way(String text) {
        assertThat(plain(text, DecimalMark.POINT)).isNaN();
    }

    private static String time(Random random) {
        String date = "%04d-%02d-%02d".formatted(1985 + random.nextInt(120), random.nextInt(14), random.nextInt(33));
        String time = "%02d:%02d:%02d".formatted(random.nextInt(26), random.nextInt(62), random.nextInt(62));
        String fraction = switch (random.nextInt(4)) {
            case 0 -> "";
            case 1 -> ".";
            case 2 -> "," + random.nextInt(1_000);
            default -> "." + random.nextInt((int) Math.pow(10, 1 + random.nextInt(9)));
        };
        String zone = List.of("", "Z", "z", "+01:00", "-0500", " Z").get(random.nextInt(6));
        String text = switch (random.nextInt(4)) {
            case 0 -> time + fraction;
            case 1 -> number(random);
            default -> date + List.of("T", " ", "_", "  ").get(random.nextInt(4)) + time + fraction + zone;
        };
        return random.nextInt(10) > 0 || text.isEmpty() ? text : text.substring(0, random.nextInt(text.length()));
    }

    @ParameterizedTest
    @EnumSource(TimeFormat.class)
    void timesAgree(TimeFormat format) {
        Random random = new Random(6);
        int read = 0;
        for (int i = 0; i < 100_000; i++) {
            String text = time(random);
            long plain = PlainCell.millis(text.toCharArray(), 0, text.length(), format, DecimalMark.POINT);
            if (plain != PlainCell.NO_TIME) {
                read++;
                assertThat(format.millis(HeaderText.clean(text), DecimalMark.POINT))
                        .as("%s as %s", text, format)
                        .hasValue(plain);
            }
        }
        boolean local = format.hasDate() && format != TimeFormat.ISO_WITH_OFFSET && format != TimeFormat.ISO_LOCAL;
        boolean epoch = format == TimeFormat.EPOCH_MILLIS || format == TimeFormat.EPOCH_SECONDS;
        assertThat(read).isGreaterThanOrEqualTo(local ? 0 : epoch ? 1 : 1_000);
    }

    @Test
    void the_days_of_a_month_are_its_own() {
        assertThat(millis("2024-02-29T00:00:00Z")).isEqualTo(1_709_164_800_000L);
        assertThat(millis("2023-02-29T00:00:00Z")).isEqualTo(PlainCell.NO_TIME);
        assertThat(millis("2024-04-31T00:00:00Z")).isEqualTo(PlainCell.NO_TIME);
        assertThat(millis("2024-13-01T00:00:00Z")).isEqualTo(PlainCell.NO_TIME);
    }

    private static long millis(String text) {
        return PlainCell.millis(text.toCharArray(), 0, text.length(), TimeFormat.ISO_WITH_OFFSET, DecimalMark.POINT);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void rows_are_those_of_the_library(long seed) throws IOException {
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            StringBuilder text = new StringBuilder();
            // every other text has no quote in it
            int pieces = i % 2 == 0 ? CSV_PIECES.length : 8;
            for (int k = random.nextInt(60); k >= 0; k--) {
                text.append(CSV_PIECES[random.nextInt(pieces)]);
            }
            assertThat(ours(text.toString())).as(text.toString()).isEqualTo(theirs(text.toString()));
        }
    }

    @Test
    void a_row_longer_than_what_is_read_at_once_is_whole() throws IOException {
        String cell = "7".repeat(4_000);
        String row = String.join(",", List.of(cell, cell, cell, cell, cell, cell));
        String text = "a,b\r\n" + row + "\r\n\r\n" + row + "\n\"" + cell + "\"," + cell;
        assertThat(ours(text)).isEqualTo(theirs(text)).hasSize(4);
    }

    /** The rows, and where it ends so, that the rest is refused. */
    private static List<String> ours(String text) throws IOException {
        List<String> rows = new ArrayList<>();
        try {
            Records records = new Records(new StringReader(text), ',', LogLimits.USUAL);
            while (records.hasNext()) {
                LogRow row = records.next();
                boolean runsOn = row.cells().stream().anyMatch(cell -> cell.matches("(?s).*[\n\r].*"));
                assertThat(row.isBroken()).isEqualTo(runsOn);
                rows.add(row.line() + " " + row.cells());
            }
        } catch (LogFormatException refused) {
            rows.add("refused");
        }
        return rows;
    }

    private static List<String> theirs(String text) throws IOException {
        List<String> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> records = CsvReader.builder()
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .trimWhitespacesAroundQuotes(true)
                .allowUnclosedQuote(true)
                .ofCsvRecord(new StringReader(text))) {
            for (CsvRecord row : records) {
                rows.add(row.getStartingLineNumber() + " " + row.getFields());
            }
        } catch (CsvParseException refused) {
            rows.add("refused");
        }
        return rows;
    }
}
