package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * Service $19 of ISO 14229-1: sub-functions $01, $02, $0A, $15, and $42 and $55 of SAE J1979-2. Codes have three bytes and a status
 * byte; in $42 a severity byte stands before each.
 */
final class UdsCodesReader {

    private static final int EMISSIONS = 0x33;
    private static final int J1939_FORMAT = 0x02;

    /** Classes A, B1, B2 and C: all that the severity mask of a $42 request may leave out. From memory. */
    private static final int ALL_CLASSES = 0x1E;

    private UdsCodesReader() {}

    /** How a sub-function lays out its answer. */
    private enum Form {
        /** 59 02 availability, then code and status. */
        PLAIN(3, 4),
        /** 59 55 group, availability, format, then code and status. */
        PERMANENT_OF_GROUP(5, 4),
        /** 59 42 group, availability, severity availability, format, then severity, code and status. */
        WITH_SEVERITY(6, 5);

        private final int headBytes;
        private final int recordBytes;

        Form(int headBytes, int recordBytes) {
            this.headBytes = headBytes;
            this.recordBytes = recordBytes;
        }

        private boolean namesGroup() {
            return this != PLAIN;
        }
    }

    static Decoded read(Message message, Requests requests) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 2) {
            throw MessageReader.unexpected(message, 1, ObdFound.END, ObdExpected.SUB_FUNCTION);
        }
        return switch (bytes.get(1)) {
            case 0x01 -> readCount(message);
            case 0x02 -> readList(message, Form.PLAIN, plainMask(message, requests), false);
            case 0x0A -> readList(message, Form.PLAIN, OptionalInt.empty(), false);
            case 0x15 -> readList(message, Form.PLAIN, OptionalInt.empty(), true);
            case 0x42 -> readList(message, Form.WITH_SEVERITY, groupMask(message, requests), false);
            case 0x55 -> readList(message, Form.PERMANENT_OF_GROUP, OptionalInt.empty(), true);
            default ->
                throw MessageReader.unexpected(
                        message,
                        1,
                        Reason.of(ObdFound.SUB_FUNCTION, Part.hex(bytes.get(1))),
                        ObdExpected.KNOWN_SUB_FUNCTION);
        };
    }

    private static Decoded readCount(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 6 || !message.isWhole()) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.COUNT_OF_CODES);
        }
        Answer.CodeCount count = new Answer.CodeCount(bytes.get(2), Bytes.word(bytes, 4));
        return Decoded.of(Reason.of(LineNote.MATCHING_CODES, Part.count(count.count())), count);
    }

    private static OptionalInt plainMask(Message message, Requests requests) {
        return requests.lastBefore(message.firstLine(), 0x19, 0x02)
                .filter(request -> request.size() == 3)
                .map(request -> OptionalInt.of(request.get(2)))
                .orElse(OptionalInt.empty());
    }

    /** Says what is missing from the list only where the request asked for the emissions group and left no class out. */
    private static OptionalInt groupMask(Message message, Requests requests) {
        return requests.lastBefore(message.firstLine(), 0x19, 0x42)
                .filter(request -> request.size() == 5
                        && request.get(2) == EMISSIONS
                        && (request.get(4) & ALL_CLASSES) == ALL_CLASSES)
                .map(request -> OptionalInt.of(request.get(3)))
                .orElse(OptionalInt.empty());
    }

    private static Decoded readList(Message message, Form form, OptionalInt mask, boolean permanent) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < form.headBytes) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.AVAILABILITY);
        }
        if (form.namesGroup() && bytes.get(form.headBytes - 1) == J1939_FORMAT) {
            throw MessageReader.unexpected(message, form.headBytes - 1, ObdFound.J1939_FORMAT, ObdExpected.CODE_FORMAT);
        }
        int availability = bytes.get(form.namesGroup() ? 3 : 2);
        List<Integer> records = bytes.subList(form.headBytes, bytes.size());
        Map<TroubleCode, StatusByte> statuses = statuses(records, form, availability);
        boolean emissions = !form.namesGroup() || bytes.get(2) == EMISSIONS;
        boolean cutShort = !message.isWhole() || isCutShort(message, records, form);
        return decoded(new Answer.CodeStatuses(mask, availability, statuses), permanent, emissions, cutShort);
    }

    private static Map<TroubleCode, StatusByte> statuses(List<Integer> records, Form form, int availability) {
        Map<TroubleCode, StatusByte> statuses = new LinkedHashMap<>();
        int codeAt = form.recordBytes - 4;
        for (int at = 0; at + form.recordBytes <= records.size(); at += form.recordBytes) {
            List<Integer> record = records.subList(at + codeAt, at + form.recordBytes);
            if (Bytes.word(record, 0) != 0) {
                TroubleCode code = TroubleCode.ofBytes(record.get(0), record.get(1), record.get(2));
                statuses.merge(code, new StatusByte(record.get(3), availability), StatusByte::worse);
            }
        }
        return statuses;
    }

    private static boolean isCutShort(Message message, List<Integer> records, Form form) {
        int rest = records.size() % form.recordBytes;
        return rest != 0
                && (message.lengthKnown() || !Bytes.isPadding(records.subList(records.size() - rest, records.size())));
    }

    private static Decoded decoded(
            Answer.CodeStatuses statuses, boolean permanent, boolean emissions, boolean cutShort) {
        List<Answer> answers = new ArrayList<>(List.of(statuses));
        if (permanent) {
            List<TroubleCode> codes = List.copyOf(statuses.statuses().keySet());
            answers.add(new Answer.CodeList(Answer.CodeList.Kind.PERMANENT, codes));
        }
        return new Decoded(answers, () -> said(statuses, permanent, emissions, cutShort), emissions && !cutShort);
    }

    private static Reason said(Answer.CodeStatuses statuses, boolean permanent, boolean emissions, boolean cutShort) {
        List<Reason> said = new ArrayList<>(List.of(list(statuses, permanent)));
        if (!emissions) {
            said.add(Reason.of(LineNote.NOT_EMISSIONS_GROUP));
        }
        if (cutShort) {
            said.add(Reason.of(LineNote.LIST_CUT_SHORT));
        }
        return Shape.EACH.of(said);
    }

    private static Reason list(Answer.CodeStatuses statuses, boolean permanent) {
        if (statuses.statuses().isEmpty()) {
            return Reason.of(permanent ? LineNote.NO_PERMANENT_STATUSES : LineNote.NO_STATUSES);
        }
        String each = statuses.statuses().entrySet().stream()
                .map(entry ->
                        entry.getKey().text() + "=" + Bytes.hex(entry.getValue().value()))
                .collect(Collectors.joining(" "));
        return Reason.of(permanent ? LineNote.PERMANENT_STATUSES : LineNote.STATUSES, Part.verbatim(each));
    }
}
