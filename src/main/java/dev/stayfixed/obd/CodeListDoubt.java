package dev.stayfixed.obd;

import dev.stayfixed.obd.Answer.CodeList.Kind;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** Which code lists may have lost codes with something that could not be read: such a list never proves that a code is absent. */
final class CodeListDoubt {

    static final Set<Kind> ALL = Set.of(Kind.values());

    private static final int GLUED_DIGITS = 6;

    private static final Map<String, Kind> NAMED = Map.ofEntries(
            Map.entry("pend", Kind.PENDING),
            Map.entry("ausstehend", Kind.PENDING),
            Map.entry("vorl\u00E4ufig", Kind.PENDING),
            Map.entry("stored", Kind.CONFIRMED),
            Map.entry("confirm", Kind.CONFIRMED),
            Map.entry("gespeichert", Kind.CONFIRMED),
            Map.entry("best\u00E4tigt", Kind.CONFIRMED),
            Map.entry("almacenad", Kind.CONFIRMED),
            Map.entry("permanent", Kind.PERMANENT));

    private static final Set<String> CODES =
            Set.of("code", "dtc", "fault", "fehler", "c\u00F3digo", "codigo", "aver\u00EDa", "averia");

    /** Words for units other than the engine's, whole words only. */
    private static final Pattern OTHER_UNIT = Pattern.compile(
            "\\b(transmission|gearbox|tcm|tcu|abs|esp|airbag|srs|bcm|body|chassis|hvac|immobili[sz]er|cluster|getriebe|karosserie"
                    + "|fahrwerk|transmisi\\p{L}+n|caja de cambios|carrocer\\p{L}+a)\\b",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    private CodeListDoubt() {}

    /** Of an answer that could not be read, by its service byte. */
    static Set<Kind> ofAnswer(int service) {
        return switch (service) {
            case 0x43, 0x47, 0x4A -> Set.of(CodeListReader.kind(service));
            case Services.UDS_CODES -> ALL;
            default -> Set.of();
        };
    }

    /** Of the answers to a request, by its service byte. */
    static Set<Kind> ofRequest(int service) {
        return ofAnswer(service + 0x40);
    }

    /** Of a line that could not be read: it may have been a code list where it shows the service byte of one among its bytes. */
    static Set<Kind> ofText(String text) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        for (String word : text.toUpperCase(Locale.ROOT).split("[\\s,:]+", -1)) {
            for (int service : new int[] {0x43, 0x47, 0x4A, Services.UDS_CODES}) {
                String digits = Bytes.hex(service);
                if (word.equals(digits) || (isGluedBytes(word) && word.contains(digits))) {
                    kinds.addAll(ofAnswer(service));
                }
            }
        }
        return kinds;
    }

    /** Of words that were not understood: the lists they name, or all where they speak of codes without naming one. */
    static Set<Kind> ofWords(String text) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        String folded = text.toLowerCase(Locale.ROOT);
        NAMED.forEach((word, kind) -> {
            if (folded.contains(word)) {
                kinds.add(kind);
            }
        });
        boolean speaksOfCodes =
                CodeWords.isIn(text, 0, text.length()) || CODES.stream().anyMatch(folded::contains);
        return kinds.isEmpty() && speaksOfCodes ? ALL : kinds;
    }

    /** A line that names another control unit: the words around it may speak of that one. */
    static boolean namesAnotherUnit(String text) {
        return mayHoldWords(text) && OTHER_UNIT.matcher(text).find();
    }

    /** Every such name has a letter that is no hexadecimal digit; most lines have none. */
    private static boolean mayHoldWords(String text) {
        for (int at = 0; at < text.length(); at++) {
            char small = (char) (text.charAt(at) | 0x20);
            if (text.charAt(at) >= 0x80 || (small > 'f' && small <= 'z')) {
                return true;
            }
        }
        return false;
    }

    private static boolean isGluedBytes(String word) {
        long digits = word.chars().filter(c -> Character.digit(c, 16) >= 0).count();
        return word.length() >= GLUED_DIGITS && digits >= word.length() - 2;
    }
}
