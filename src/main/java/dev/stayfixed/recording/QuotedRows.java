package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.RecordType;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Takes the cells that the CSV library finds over into rows, without making texts of them. */
final class QuotedRows extends AbstractBaseCsvCallbackHandler<LogRow> {

    private final LogLimits limits;
    private final long before;
    private final int[] ends;
    private char[] text = new char[1 << 10];
    private boolean broken;

    /** @param before lines above the first that the library sees */
    QuotedRows(LogLimits limits, long before) {
        this.limits = limits;
        this.before = before;
        this.ends = new int[limits.columns()];
    }

    @Override
    protected void handleBegin(long startingLineNumber) {
        broken = false;
    }

    @Override
    protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
        if (index == limits.columns() || length > limits.cellLength()) {
            throw new CsvParseException("more cells, or longer ones, than the limits allow");
        }
        int start = index == 0 ? 0 : ends[index - 1] + 1;
        int end = start + length;
        if (end >= text.length) {
            text = Arrays.copyOf(text, 2 * end);
        }
        if (index > 0) {
            text[start - 1] = ',';
        }
        System.arraycopy(buffer, offset, text, start, length);
        broken |= LogRow.isBroken(text, start, end);
        ends[index] = end;
    }

    @Override
    protected @Nullable LogRow buildRecord() {
        if (getRecordType() != RecordType.DATA) {
            return null;
        }
        int cells = getFieldCount();
        int end = cells == 0 ? 0 : ends[cells - 1];
        return new LogRow(
                before + getStartingLineNumber(), Arrays.copyOf(text, end), Arrays.copyOf(ends, cells), broken);
    }
}
