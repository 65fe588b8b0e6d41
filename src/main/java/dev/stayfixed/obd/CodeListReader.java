package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Services $03, $07 and $0A. On CAN a count byte stands before the codes (ISO 15765-4, SAE J1979); the older protocols send six
 * bytes, three codes padded with 0000, and no count.
 */
final class CodeListReader {

    private static final int OLDER_BYTES = 6;
    private static final int FILL = 0xFFFF;

    private CodeListReader() {}

    static Answer.CodeList.Kind kind(int service) {
        return switch (service) {
            case 0x43 -> Answer.CodeList.Kind.CONFIRMED;
            case 0x47 -> Answer.CodeList.Kind.PENDING;
            default -> Answer.CodeList.Kind.PERMANENT;
        };
    }

    static Decoded read(Message message) {
        List<Integer> data = message.bytes().subList(1, message.bytes().size());
        if (data.isEmpty()) {
            throw MessageReader.unexpected(message, 1, ObdFound.END, ObdExpected.CODES_OR_COUNT);
        }
        return isOlder(message.layout(), data) ? readOlder(message, data) : readCan(message, data);
    }

    /** Without a header six bytes (or twelve, ...) are the older layout: on CAN the count and its pairs are an odd number. */
    private static boolean isOlder(Message.Layout layout, List<Integer> data) {
        return layout == Message.Layout.OLDER
                || (layout == Message.Layout.UNKNOWN && data.size() % OLDER_BYTES == 0 && !isPaddedCan(data));
    }

    private static Decoded readOlder(Message message, List<Integer> data) {
        boolean ambiguous = message.layout() == Message.Layout.UNKNOWN && couldBeCan(data);
        Optional<Reason> note = ambiguous ? Optional.of(Reason.of(LineNote.OLDER_LAYOUT)) : Optional.empty();
        boolean cutShort = data.size() % 2 != 0 || !message.isWhole();
        Set<TroubleCode> possible = ambiguous ? Set.copyOf(codes(data.subList(1, 1 + 2 * data.get(0)))) : Set.of();
        Optional<Reason> missing = cutShort ? Optional.of(Reason.of(LineNote.LAST_CODE_CUT)) : Optional.empty();
        return decoded(message, codes(data), missing, note, possible);
    }

    /** Padded to eight bytes, a CAN answer could look the same. */
    private static boolean couldBeCan(List<Integer> data) {
        int end = 1 + 2 * data.get(0);
        return data.get(0) > 0 && end < data.size() && Bytes.isPadding(data.subList(end, data.size()));
    }

    /** The older protocols fill up with 00 alone; 55, AA or FF to the end, an odd number of them, are the padding of a CAN frame. */
    private static boolean isPaddedCan(List<Integer> data) {
        int end = 1 + 2 * data.get(0);
        return end < data.size() && data.get(data.size() - 1) != 0 && Bytes.isPadding(data.subList(end, data.size()));
    }

    private static Decoded readCan(Message message, List<Integer> data) {
        int count = data.get(0);
        int end = 1 + 2 * count;
        if (data.size() > end && !mayFollow(message, data.subList(end, data.size()))) {
            throw MessageReader.unexpected(
                    message,
                    1,
                    Reason.of(ObdFound.COUNT_BEFORE, Part.count(count), Part.count(data.size() - 1)),
                    ObdExpected.TWO_BYTES_A_CODE);
        }
        List<Integer> pairs = data.subList(1, Math.min(end, data.size()));
        List<TroubleCode> codes = codes(withoutFill(pairs));
        Optional<Reason> note = doubt(message, pairs, count, codes);
        boolean couldBeOlder = message.layout() == Message.Layout.UNKNOWN && data.size() % OLDER_BYTES == 0;
        Decoded decoded =
                decoded(message, codes, message.missing(), note, couldBeOlder ? Set.copyOf(codes(data)) : Set.of());
        return note.isEmpty() ? decoded : decoded.incomplete();
    }

    /** A list with fewer codes than its count may have lost one; U3FFF at its end may be filling. */
    private static Optional<Reason> doubt(Message message, List<Integer> pairs, int count, List<TroubleCode> found) {
        if (message.missing().isPresent()) {
            return Optional.empty();
        }
        if (found.size() < count) {
            LineNote what = pairs.size() < 2 * count ? LineNote.LIST_TOO_SHORT : LineNote.LIST_DOUBTFUL;
            return Optional.of(Reason.of(what, Part.count(count), Part.count(found.size())));
        }
        boolean endsInFill = pairs.size() >= 2 && Bytes.word(pairs, pairs.size() - 2) == FILL;
        return endsInFill && !message.lengthKnown()
                ? Optional.of(Reason.of(LineNote.LIST_MAY_END_IN_FILLING))
                : Optional.empty();
    }

    private static boolean mayFollow(Message message, List<Integer> rest) {
        return !message.lengthKnown() && Bytes.isPadding(rest);
    }

    /** Pairs of AA or 55 at the end stand where codes were announced, but are no codes. */
    private static List<Integer> withoutFill(List<Integer> pairs) {
        int end = pairs.size();
        while (end >= 2 && pairs.get(end - 1) != 0xFF && Bytes.isPadding(pairs.subList(end - 2, pairs.size()))) {
            end -= 2;
        }
        return pairs.subList(0, end);
    }

    /** Whole pairs; 0000 is padding. */
    private static List<TroubleCode> codes(List<Integer> pairs) {
        List<TroubleCode> codes = new ArrayList<>();
        for (int at = 0; at + 1 < pairs.size(); at += 2) {
            if (Bytes.word(pairs, at) != 0) {
                codes.add(TroubleCode.ofBytes(pairs.get(at), pairs.get(at + 1)));
            }
        }
        return codes;
    }

    private static Decoded decoded(
            Message message,
            List<TroubleCode> codes,
            Optional<Reason> missing,
            Optional<Reason> note,
            Set<TroubleCode> possible) {
        Answer.CodeList list = new Answer.CodeList(kind(message.service()), codes);
        return new Decoded(List.of(list), () -> said(list, missing, note), missing.isEmpty(), possible);
    }

    private static Reason said(Answer.CodeList list, Optional<Reason> missing, Optional<Reason> note) {
        Optional<Reason> cut = missing.map(what -> Reason.of(LineNote.LIST_LACKS, what));
        return Shape.EACH.of(Stream.of(Optional.of(list(list)), cut, note)
                .flatMap(Optional::stream)
                .toList());
    }

    static Reason list(Answer.CodeList list) {
        if (list.codes().isEmpty()) {
            return Reason.of(
                    switch (list.kind()) {
                        case CONFIRMED -> LineNote.NO_CONFIRMED_CODES;
                        case PENDING -> LineNote.NO_PENDING_CODES;
                        case PERMANENT -> LineNote.NO_PERMANENT_CODES;
                    });
        }
        LineNote kind = switch (list.kind()) {
            case CONFIRMED -> LineNote.CONFIRMED_CODES_ARE;
            case PENDING -> LineNote.PENDING_CODES_ARE;
            case PERMANENT -> LineNote.PERMANENT_CODES_ARE;
        };
        return Reason.of(
                kind,
                Shape.LIST.of(list.codes().stream()
                        .map(code -> Part.verbatim(code.text()))
                        .toList()));
    }
}
