package dev.stayfixed.platform.problem;

import java.io.IOException;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Tells the failure of a write to a disk that is full by what the operating system says. */
public final class FullDisk {

    /** Of Linux and macOS, of quotas, and of Windows. */
    private static final Pattern FULL = Pattern.compile("No space left|quota exceeded|not enough space");

    private FullDisk() {}

    /** Whether a failure, or what caused it, is such a write. */
    public static boolean isBehind(Throwable failure) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
                .limit(50)
                .anyMatch(cause -> cause instanceof IOException
                        && FULL.matcher(String.valueOf(cause.getMessage())).find());
    }

    /** What to say of one that the request met before anything was stored. */
    public static Refused refusal(Throwable failure) {
        return new Refused(
                ProblemType.STORAGE_FULL,
                "the disk takes nothing more; free some space on it and repeat the request; nothing of it was stored",
                failure);
    }
}
