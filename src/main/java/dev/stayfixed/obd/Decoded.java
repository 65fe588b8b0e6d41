package dev.stayfixed.obd;

import java.util.List;

/**
 * What a whole message turned out to say.
 *
 * @param answers empty where the message is fine but carries nothing that is used
 * @param whole false where codes may be missing from the list
 */
record Decoded(List<Answer> answers, String explanation, boolean whole) {

    static Decoded of(String explanation, Answer... answers) {
        return new Decoded(List.of(answers), explanation, true);
    }
}
