package dev.stayfixed.obd;

import dev.stayfixed.obd.Answer.CodeList.Kind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A whole code list in words: "Pending codes: none", "no stored codes", "Permanent codes: P0420, P0171". English, and what is simple
 * in German and Spanish. Read only where the whole line fits: any word more ("could be read", "not supported") and it says nothing.
 */
final class WordList {

    private static final List<String> NOUNS = List.of(
            "code",
            "codes",
            "dtc",
            "dtcs",
            "fault code",
            "fault codes",
            "trouble code",
            "trouble codes",
            "error code",
            "error codes",
            "diagnostic trouble code",
            "diagnostic trouble codes",
            "fehler",
            "fehlercode",
            "fehlercodes",
            "storungscodes",
            "codigo",
            "codigos",
            "codigo de averia",
            "codigos de averia",
            "codigos de falla",
            "codigos de fallo",
            "codigos de error");

    private static final Map<String, Kind> KINDS = kinds();

    /** "None" as a word or as the number 0; "no" alone could be the beginning of "not read". */
    private static final Set<String> NONE = Set.of(
            "none",
            "none found",
            "none stored",
            "none present",
            "none detected",
            "none reported",
            "0",
            "zero",
            "0 codes",
            "0 dtcs",
            "no codes",
            "no dtcs",
            "keine",
            "keine gefunden",
            "keine vorhanden",
            "leer",
            "ninguno",
            "ninguna",
            "no hay");

    private static final Set<String> NO = Set.of("no", "0", "zero", "keine", "sin", "no hay", "ningun");

    private static final List<String> THERE = List.of(
            "",
            "found",
            "present",
            "detected",
            "reported",
            "in memory",
            "gefunden",
            "vorhanden",
            "encontrados",
            "presentes");

    private static final Set<String> AND = Set.of("and", "und", "y");

    /** What stands on the left of the colon, or between "no" and the end. */
    private static final Map<String, Kind> LABELS = labels();

    private WordList() {}

    private static Map<String, Kind> kinds() {
        Map<String, Kind> kinds = new HashMap<>();
        for (String word : List.of(
                "stored",
                "confirmed",
                "gespeicherte",
                "gespeicherten",
                "gespeichert",
                "bestatigte",
                "bestatigten",
                "almacenado",
                "almacenados",
                "guardados",
                "confirmados")) {
            kinds.put(word, Kind.CONFIRMED);
        }
        for (String word : List.of(
                "pending", "ausstehende", "ausstehenden", "vorlaufige", "vorlaufigen", "pendiente", "pendientes")) {
            kinds.put(word, Kind.PENDING);
        }
        for (String word : List.of("permanent", "permanente", "permanenten", "permanentes")) {
            kinds.put(word, Kind.PERMANENT);
        }
        return kinds;
    }

    private static Map<String, Kind> labels() {
        Map<String, Kind> labels = new HashMap<>();
        labels.put("fehlerspeicher", Kind.CONFIRMED);
        for (String noun : NOUNS) {
            labels.put(noun, Kind.CONFIRMED);
            KINDS.forEach((word, kind) -> {
                labels.put(word + " " + noun, kind);
                labels.put(noun + " " + word, kind);
            });
        }
        return Map.copyOf(labels);
    }

    static Optional<LineContent> read(Phrase phrase) {
        return readNone(phrase).or(() -> readNegated(phrase)).or(() -> readCodes(phrase));
    }

    private static Optional<LineContent> readNone(Phrase phrase) {
        for (int cut : phrase.cuts()) {
            Optional<Kind> kind = kind(phrase.before(cut), phrase.colon() >= 0);
            if (kind.isPresent() && NONE.contains(phrase.after(cut))) {
                return kind.map(WordList::none);
            }
        }
        return Optional.empty();
    }

    /** "Pending: none" needs its colon; "pending codes none" does not. */
    private static Optional<Kind> kind(String label, boolean colon) {
        Kind kind = LABELS.get(label);
        return Optional.ofNullable(kind == null && colon ? KINDS.get(label) : kind);
    }

    private static Optional<LineContent> readNegated(Phrase phrase) {
        if (phrase.colon() >= 0) {
            return Optional.empty();
        }
        String all = phrase.all();
        for (String no : NO) {
            for (String there : THERE) {
                String end = there.isEmpty() ? "" : " " + there;
                if (all.startsWith(no + " ") && all.endsWith(end) && all.length() > no.length() + 1 + end.length()) {
                    Kind kind = LABELS.get(all.substring(no.length() + 1, all.length() - end.length()));
                    if (kind != null) {
                        return Optional.of(none(kind));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static LineContent none(Kind kind) {
        return new LineContent.Words(new Answer.CodeList(kind, List.of()), true);
    }

    /** Only behind a list named in the plural: "Pending: P0420" may be one of several lines. */
    private static Optional<LineContent> readCodes(Phrase phrase) {
        if (phrase.cuts().size() != 1 || phrase.colon() < 0) {
            return Optional.empty();
        }
        List<TroubleCode> codes = new ArrayList<>();
        for (String word : phrase.words().subList(phrase.colon(), phrase.words().size())) {
            if (CodeWords.isCode(word)) {
                codes.add(TroubleCode.parse(word));
            } else if (!AND.contains(word)) {
                return Optional.empty();
            }
        }
        return namedInPlural(phrase.before(phrase.colon()))
                .filter(kind -> !codes.isEmpty())
                .map(kind -> new LineContent.Words(new Answer.CodeList(kind, codes), true));
    }

    /** "Codes" alone does not say which. */
    private static Optional<Kind> namedInPlural(String label) {
        boolean named = !NOUNS.contains(label) && label.matches(".*(codes|dtcs|codigos|fehler)\\b.*");
        return named ? Optional.ofNullable(LABELS.get(label)) : Optional.empty();
    }
}
