package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;

/**
 * A line of hexadecimal digits: with a CAN header of 11 or 29 bits, with an older header of three bytes, or without any; spaced or
 * glued. Headers: 7E8 to 7EF and 18DAF1xx answer, 7DF, 7E0 to 7E7, 18DB33F1 and 18DAxxF1 ask (ISO 15765-4).
 */
final class HexLine {

    private static final int CAN_DATA_BYTES = 8;
    private static final int LENGTH_DIGITS = 3;
    private static final int EXTENDED_DIGITS = 8;

    private HexLine() {}

    /**
     * A line as most tools write it: bytes of two digits with one blank between two of them, perhaps behind a header of three digits.
     * Empty for any other, which {@link #read} has to take apart.
     */
    static Optional<LineContent> readPlain(String line, int from, int to) {
        int start =
                from + LENGTH_DIGITS < to && line.charAt(from + LENGTH_DIGITS) == ' ' ? from + LENGTH_DIGITS + 1 : from;
        List<Integer> bytes = HexTokens.plainBytes(line, start, to);
        if (bytes.isEmpty()) {
            return Optional.empty();
        }
        if (start == from) {
            boolean extended = bytes.get(0) == 0x18 && bytes.size() > 1 && bytes.get(1) >> 1 == 0xDA >> 1;
            return extended ? Optional.empty() : Optional.of(readWithoutCan(line, from, bytes));
        }
        boolean header = line.charAt(from) != '0' && HexTokens.areDigits(line, from, from + LENGTH_DIGITS);
        return header
                ? Optional.of(
                        readHeadered(line, from, HexTokens.upper(line.substring(from, from + LENGTH_DIGITS)), bytes))
                : Optional.empty();
    }

    static LineContent read(String line, int from, int to) {
        return read(line, HexTokens.split(line, from, to));
    }

    static LineContent read(String line, List<HexTokens.Token> tokens) {
        HexTokens.Token first = tokens.get(0);
        String digits = first.digits();
        boolean alone = tokens.size() == 1;
        if (alone && digits.length() == LENGTH_DIGITS) {
            return readLength(line, first);
        }
        Optional<LineContent> request = readRequestWithCount(line, tokens);
        if (request.isPresent()) {
            return request.get();
        }
        if (digits.length() == LENGTH_DIGITS && digits.charAt(0) == '0') {
            return readLengthAndAnswer(line, tokens);
        }
        int header = headerDigits(tokens);
        if (header == 0) {
            return readWithoutCan(line, first.at(), HexTokens.bytes(line, tokens));
        }
        String glued = glue(tokens.subList(0, Math.min(4, tokens.size()))).substring(0, header);
        return readHeadered(line, first.at(), glued, HexTokens.bytes(line, behind(tokens, header)));
    }

    private static LineContent readWithoutCan(String line, int at, List<Integer> bytes) {
        return OlderHeader.read(line, bytes).orElseGet(() -> readBare(line, at, bytes));
    }

    /** "014" above numbered lines; 7E8 alone is a header that lost its bytes. */
    private static LineContent readLength(String line, HexTokens.Token token) {
        int length = Integer.parseInt(token.digits(), 16);
        if (length < CAN_DATA_BYTES) {
            throw new ObdFormatException(
                    line, token.at(), HexTokens.quoted(token.digits()), ObdExpected.LENGTH_OR_BYTES);
        }
        return new LineContent.Length(length);
    }

    /** "01 0C 1": a single digit behind a request tells the adapter how many answers to wait for. */
    private static Optional<LineContent> readRequestWithCount(String line, List<HexTokens.Token> tokens) {
        HexTokens.Token last = tokens.get(tokens.size() - 1);
        boolean asked = tokens.get(0).digits().charAt(0) == '0'
                || tokens.get(0).digits().startsWith("19");
        boolean glued = tokens.size() == 1
                && last.digits().length() % 2 == 1
                && last.digits().length() > LENGTH_DIGITS;
        boolean spaced = tokens.size() > 1
                && last.digits().length() == 1
                && tokens.get(0).digits().length() % 2 == 0;
        if (!asked || (!glued && !spaced)) {
            return Optional.empty();
        }
        List<Integer> bytes = glued
                ? HexTokens.bytes(
                        line,
                        List.of(new HexTokens.Token(
                                last.digits().substring(0, last.digits().length() - 1), last.at())))
                : HexTokens.bytes(line, tokens.subList(0, tokens.size() - 1));
        return Services.isRequest(bytes.get(0)) ? Optional.of(new LineContent.Request(bytes)) : Optional.empty();
    }

    /** "014 49 02 01 ...": the adapter's length and the whole answer behind it. */
    private static LineContent readLengthAndAnswer(String line, List<HexTokens.Token> tokens) {
        int length = Integer.parseInt(tokens.get(0).digits(), 16);
        List<Integer> bytes = HexTokens.bytes(line, tokens.subList(1, tokens.size()));
        if (length == 0 || bytes.size() < length || !Services.isAnswer(bytes.get(0))) {
            throw new ObdFormatException(
                    line,
                    tokens.get(0).at(),
                    Reason.of(
                            ObdFound.LENGTH_AND_BYTES,
                            Part.verbatim(tokens.get(0).digits()),
                            Part.count(bytes.size())),
                    ObdExpected.HEADER_OR_LENGTH);
        }
        return new LineContent.Whole("", bytes.subList(0, length), Message.Layout.CAN, true);
    }

    /** How many digits of the line are a CAN header: 3, 8 or 0. */
    private static int headerDigits(List<HexTokens.Token> tokens) {
        String first = tokens.get(0).digits();
        if (first.length() % 2 == 1) {
            boolean glued = first.length() > LENGTH_DIGITS && first.charAt(0) == '7';
            return glued || first.length() == LENGTH_DIGITS ? LENGTH_DIGITS : 0;
        }
        String start = glue(tokens.subList(0, Math.min(4, tokens.size())));
        boolean extended = start.startsWith("18DA") || start.startsWith("18DB");
        return extended && start.length() > EXTENDED_DIGITS - 1 ? EXTENDED_DIGITS : 0;
    }

    private static String glue(List<HexTokens.Token> tokens) {
        StringBuilder digits = new StringBuilder();
        tokens.forEach(token -> digits.append(token.digits()));
        return digits.toString();
    }

    private static LineContent readHeadered(String line, int at, String header, List<Integer> bytes) {
        if (bytes.isEmpty()) {
            throw new ObdFormatException(
                    line, at, Reason.of(ObdFound.HEADER_ALONE, Part.verbatim(header)), ObdExpected.BYTES_BEHIND);
        }
        if (isAsking(header)) {
            return asked(bytes);
        }
        if (bytes.get(0) >> 4 > 3) {
            if (!Services.isAnswer(bytes.get(0))) {
                throw notAnAnswer(line, at, bytes.get(0));
            }
            return new LineContent.Whole(header, bytes, Message.Layout.CAN, false);
        }
        if (bytes.size() > CAN_DATA_BYTES) {
            throw new ObdFormatException(
                    line,
                    at,
                    Reason.of(ObdFound.BYTES_BEHIND_HEADER, Part.count(bytes.size())),
                    ObdExpected.CAN_FRAME_SIZE);
        }
        return new LineContent.Frame(header, bytes);
    }

    private static List<HexTokens.Token> behind(List<HexTokens.Token> tokens, int digits) {
        int left = digits;
        int next = 0;
        while (left >= tokens.get(next).digits().length()) {
            left -= tokens.get(next++).digits().length();
            if (next == tokens.size()) {
                return List.of();
            }
        }
        HexTokens.Token split = tokens.get(next);
        List<HexTokens.Token> rest = new java.util.ArrayList<>(tokens.subList(next, tokens.size()));
        rest.set(0, new HexTokens.Token(split.digits().substring(left), split.at() + left));
        return rest;
    }

    private static boolean isAsking(String header) {
        if (header.length() == LENGTH_DIGITS) {
            int id = Integer.parseInt(header, 16);
            return id == 0x7DF || (id >= 0x7E0 && id <= 0x7E7);
        }
        return !header.startsWith("18DAF1");
    }

    /** The bytes of the request inside a single frame; flow control and longer requests say nothing that is needed. */
    private static LineContent asked(List<Integer> frame) {
        int length = frame.get(0);
        boolean single = length >= 1 && length <= 7 && frame.size() > length;
        return single
                ? new LineContent.Request(frame.subList(1, 1 + length))
                : new LineContent.Nothing(Reason.of(LineNote.SENT_BY_TOOL));
    }

    /** A line without header: an answer, a raw CAN frame or a request. */
    private static LineContent readBare(String line, int at, List<Integer> bytes) {
        int first = bytes.get(0);
        if (Services.isAnswer(first)) {
            return new LineContent.Whole("", bytes, Message.Layout.UNKNOWN, false);
        }
        if (isBareFrame(bytes)) {
            return new LineContent.Frame("", bytes);
        }
        if (Services.isRequest(first)) {
            return new LineContent.Request(bytes);
        }
        throw notAnAnswer(line, at, first);
    }

    /** Without a header, bytes that could be a request are one, unless they fill a frame and an answer stands where it must. */
    private static boolean isBareFrame(List<Integer> bytes) {
        int kind = bytes.get(0) >> 4;
        int size = bytes.size();
        if (kind == 0 && size > 1) {
            int length = bytes.get(0);
            boolean fits = (size == CAN_DATA_BYTES && length < CAN_DATA_BYTES) || (length >= 3 && size == 1 + length);
            return fits && Services.isAnswer(bytes.get(1));
        }
        if (kind == 1) {
            return size == CAN_DATA_BYTES && Services.isAnswer(bytes.get(2));
        }
        return kind == 2 && size > 1 && size <= CAN_DATA_BYTES;
    }

    private static ObdFormatException notAnAnswer(String line, int at, int found) {
        return new ObdFormatException(
                line, at, Reason.of(ObdFound.SINGLE_BYTE, Part.hex(found)), ObdExpected.ANSWER_OR_REQUEST);
    }
}
