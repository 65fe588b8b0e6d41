package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/**
 * The records of a CSV text one after another, with the library's failures turned into ours. Most logs have no quote in them and need
 * no library.
 */
final class Records {

    private final PlainLines plain;
    private final char separator;
    private final LogLimits limits;
    private @Nullable Iterator<LogRow> quoted;
    private @Nullable LogRow next;
    private long line = 1;

    Records(Reader reader, char separator, LogLimits limits) {
        this.plain = new PlainLines(reader, separator, limits);
        this.separator = separator;
        this.limits = limits;
    }

    boolean hasNext() throws IOException {
        if (next == null) {
            next = fetch();
        }
        return next != null;
    }

    LogRow next() throws IOException {
        LogRow row = next != null ? next : fetch();
        if (row == null) {
            throw new NoSuchElementException();
        }
        next = null;
        line = row.line();
        return row;
    }

    private @Nullable LogRow fetch() throws IOException {
        try {
            LogRow row = quoted == null ? plain.next() : null;
            return row != null ? row : fetchQuoted();
        } catch (PlainLines.TooLarge tooLarge) {
            throw notCut();
        } catch (CsvParseException broken) {
            throw broken.getCause() instanceof LogFormatException already ? already : notCut();
        } catch (UncheckedIOException failed) {
            throw failed.getCause();
        }
    }

    private @Nullable LogRow fetchQuoted() throws IOException {
        Iterator<LogRow> rows = quoted;
        if (rows == null) {
            rows = CsvReader.builder()
                    .fieldSeparator(separator)
                    .skipEmptyLines(true)
                    .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .trimWhitespacesAroundQuotes(true)
                    .allowUnclosedQuote(true)
                    .maxBufferSize(1 << 20)
                    .build(new QuotedRows(limits, plain.lines()), plain.rest())
                    .iterator();
            quoted = rows;
        }
        return rows.hasNext() ? rows.next() : null;
    }

    private LogFormatException notCut() {
        return LogFormatException.atLine(
                line + 1,
                LogFound.UNCUT_ROW,
                Reason.of(LogExpected.CELLS, Part.count(limits.columns()), Part.count(limits.cellLength())));
    }
}
