package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Headers that give service and PID in hexadecimal: {@code 01-0C}, {@code 010C}, {@code 01 0C}, {@code $01 $0C}. */
final class PidNames {

    private static final Pattern PAIR =
            Pattern.compile("(?:0x|\\$)?01[-_ :./]?(?:0x|\\$)?([0-9A-Fa-f]{2})(?:\\s*[\\[(].*)?");

    private PidNames() {}

    static Optional<KnownName> named(String header) {
        Matcher pair = PAIR.matcher(HeaderText.clean(header));
        if (!pair.matches()) {
            return Optional.empty();
        }
        int pid = Integer.parseInt(pair.group(1), 16);
        return Arrays.stream(Signal.values())
                .filter(signal -> signal.pid().orElse(-1) == pid)
                .map(signal -> new KnownName(signal, "SAE J1979 service $01 PID $%02X".formatted(pid)))
                .findFirst();
    }
}
