package dev.stayfixed.simulator;

import java.util.Arrays;
import java.util.List;

/**
 * A request and one control unit's answer to it.
 *
 * @param request such as "01 41"
 * @param unit 0 the engine's, 1 the transmission's
 * @param answer from the service byte of the answer on
 */
record Message(String request, int unit, List<Integer> answer) {

    Message {
        answer = List.copyOf(answer);
    }

    static Message of(String request, int unit, int... bytes) {
        return new Message(request, unit, Arrays.stream(bytes).boxed().toList());
    }

    int[] bytes() {
        return answer.stream().mapToInt(Integer::intValue).toArray();
    }
}
