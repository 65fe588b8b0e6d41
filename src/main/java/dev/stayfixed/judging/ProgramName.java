package dev.stayfixed.judging;

import dev.stayfixed.platform.Sha256;
import dev.stayfixed.verification.RuleSet;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Comparator;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;
import org.springframework.util.function.SingletonSupplier;

/**
 * The name of the program that judges: its rule set and a digest of all its classes. So whatever is mended in reading, judging or
 * keeping makes another name, and nobody has to remember to raise a number. A library that is changed alone makes none.
 */
@Component
class ProgramName {

    private static final String CLASSES = "classpath*:dev/stayfixed/**/*.class";

    private final SingletonSupplier<String> text =
            SingletonSupplier.of(() -> RuleSet.STANDARD.id() + ", " + digestOfClasses());

    /** At most 100 characters. */
    String text() {
        return text.obtain();
    }

    private static String digestOfClasses() {
        try {
            MessageDigest digest = Sha256.begin();
            Resource[] classes = new PathMatchingResourcePatternResolver().getResources(CLASSES);
            Arrays.sort(classes, Comparator.comparing(Resource::getDescription));
            for (Resource one : classes) {
                digest.update(one.getContentAsByteArray());
            }
            return Sha256.hex(digest, new byte[0]);
        } catch (IOException e) {
            throw new UncheckedIOException("the classes of this program cannot be read", e);
        }
    }
}
