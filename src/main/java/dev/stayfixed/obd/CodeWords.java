package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line that names codes in words, such as "P0420 pending". Read only when it says in which list they stand and nothing in it takes
 * that back. Such a line is never the whole list.
 */
final class CodeWords {

    private static final Pattern CODE = pattern("(?<![A-Z0-9])[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?(?![A-Z0-9-])");
    private static final Pattern LIST = pattern("\\b(confirmed|stored|pending|permanent)\\b");
    private static final Pattern DOUBT = pattern(
            "\\b(no|not|none|never|without|un\\w+|cleared|erased|gone|absent|history|was|were|if|\\w+n't)\\b|\\?");

    private CodeWords() {}

    private static Pattern pattern(String text) {
        return Pattern.compile(text, Pattern.CASE_INSENSITIVE);
    }

    /** "C0420" alone could pass for hexadecimal digits. */
    static boolean isBareCode(String line, int from, int to) {
        return to - from == "C0420".length() && "PCBUpcbu".indexOf(line.charAt(from)) >= 0 && isIn(line, from, to);
    }

    /** The whole word is a code. */
    static boolean isCode(String word) {
        return CODE.matcher(word).matches();
    }

    static boolean isIn(String line, int from, int to) {
        return CODE.matcher(line).region(from, to).find();
    }

    static LineContent read(String line, int from, int to) {
        Set<Answer.CodeList.Kind> kinds = EnumSet.noneOf(Answer.CodeList.Kind.class);
        Matcher list = LIST.matcher(line).region(from, to);
        while (list.find()) {
            kinds.add(kind(list.group(1)));
        }
        if (kinds.size() != 1) {
            throw refused(line, from, kinds.isEmpty() ? ObdFound.CODE_WITHOUT_LIST : ObdFound.CODE_WITH_LISTS);
        }
        Matcher doubt = DOUBT.matcher(line).region(from, to);
        if (doubt.find()) {
            throw refused(line, doubt.start(), Reason.of(ObdFound.BESIDE_CODE, Part.verbatim(doubt.group())));
        }
        List<TroubleCode> codes = new ArrayList<>();
        Matcher code = CODE.matcher(line).region(from, to);
        while (code.find()) {
            codes.add(TroubleCode.parse(code.group()));
        }
        return new LineContent.Words(new Answer.CodeList(kinds.iterator().next(), codes), false);
    }

    private static Answer.CodeList.Kind kind(String word) {
        if (word.equalsIgnoreCase("pending")) {
            return Answer.CodeList.Kind.PENDING;
        }
        return word.equalsIgnoreCase("permanent") ? Answer.CodeList.Kind.PERMANENT : Answer.CodeList.Kind.CONFIRMED;
    }

    private static ObdFormatException refused(String line, int at, Part found) {
        return new ObdFormatException(line, at, found, ObdExpected.CODE_AND_LIST);
    }
}
