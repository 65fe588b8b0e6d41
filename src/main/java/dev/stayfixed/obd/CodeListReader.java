package dev.stayfixed.obd;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

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
            throw MessageReader.unexpected(message, 1, "the end", "the number of codes (CAN) or six bytes of codes");
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
        String note = ambiguous
                ? "; read as the older layout without count byte, because six bytes follow (with headers there is no doubt)"
                : "";
        boolean cutShort = data.size() % 2 != 0 || !message.isWhole();
        Set<TroubleCode> possible = ambiguous ? Set.copyOf(codes(data.subList(1, 1 + 2 * data.get(0)))) : Set.of();
        return decoded(message, codes(data), cutShort ? "the last code is cut short" : "", note, possible);
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
                    "the count " + count + " before " + (data.size() - 1) + " bytes",
                    "two bytes a code; with the header the layout would be certain");
        }
        List<Integer> pairs = data.subList(1, Math.min(end, data.size()));
        List<TroubleCode> codes = codes(withoutFill(pairs));
        String note = doubt(message, pairs, count, codes);
        boolean couldBeOlder = message.layout() == Message.Layout.UNKNOWN && data.size() % OLDER_BYTES == 0;
        Decoded decoded =
                decoded(message, codes, message.missing(), note, couldBeOlder ? Set.copyOf(codes(data)) : Set.of());
        return note.isEmpty() ? decoded : decoded.incomplete();
    }

    /** A list with fewer codes than its count may have lost one; U3FFF at its end may be filling. */
    private static String doubt(Message message, List<Integer> pairs, int count, List<TroubleCode> found) {
        if (!message.missing().isEmpty()) {
            return "";
        }
        if (found.size() < count) {
            String what = pairs.size() < 2 * count ? "cut short" : "doubtful";
            return "; the list is " + what + ": " + count + " codes announced and " + found.size() + " there";
        }
        boolean endsInFill = pairs.size() >= 2 && Bytes.word(pairs, pairs.size() - 2) == FILL;
        return endsInFill && !message.lengthKnown() ? "; the list is doubtful: FF FF may be filling" : "";
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
            Message message, List<TroubleCode> codes, String missing, String note, Set<TroubleCode> possible) {
        Answer.CodeList list = new Answer.CodeList(kind(message.service()), codes);
        String cut = missing.isEmpty() ? "" : "; the list is cut short: " + missing;
        return new Decoded(List.of(list), () -> list(list) + cut + note, missing.isEmpty(), possible);
    }

    static String list(Answer.CodeList list) {
        String kind = list.kind().name().toLowerCase(java.util.Locale.ROOT);
        return list.codes().isEmpty()
                ? "no " + kind + " codes"
                : kind + ": " + list.codes().stream().map(TroubleCode::text).collect(Collectors.joining(", "));
    }
}
