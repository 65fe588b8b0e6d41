package dev.stayfixed.platform;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The texts of what is written: "jobs.entry.repair.measurements.unit" is what that field is called, and with ".NotBlank" behind it what that
 * constraint wants.
 */
final class EntryTexts {

    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.stayfixed");

    private static final Pattern KEY = Pattern.compile("([a-z]+)\\.entry\\.([a-z-]+)\\.([\\w.]+?)(?:\\.([A-Z]\\w+))?");

    private EntryTexts() {}

    /** A record has this path, and this constraint at it. */
    static boolean isOfARecord(String key) {
        Matcher parts = KEY.matcher(key);
        return parts.matches()
                && SERVICE.stream()
                        .filter(c -> c.getPackageName().startsWith("dev.stayfixed." + parts.group(1)))
                        .filter(c ->
                                name(c).equals(parts.group(2)) && c.reflect().isRecord())
                        .anyMatch(c -> has(c.reflect(), parts.group(3).split("\\.", -1), parts.group(4)));
    }

    private static String name(JavaClass record) {
        return record.getSimpleName()
                .replaceFirst("Entry$", "")
                .replaceAll("(?<=[a-z])(?=[A-Z])", "-")
                .toLowerCase(Locale.ROOT);
    }

    private static boolean has(Class<?> record, String[] path, @Nullable String constraint) {
        if (!record.isRecord()) {
            return false;
        }
        Optional<RecordComponent> component = Arrays.stream(record.getRecordComponents())
                .filter(c -> c.getName().equals(path[0]))
                .findFirst();
        if (component.isEmpty() || (path.length == 1 && constraint == null)) {
            return component.isPresent();
        }
        return path.length == 1
                ? Arrays.stream(component.get().getAccessor().getAnnotations())
                        .anyMatch(a -> a.annotationType().getSimpleName().equals(constraint))
                : has(within(component.get()), Arrays.copyOfRange(path, 1, path.length), constraint);
    }

    private static Class<?> within(RecordComponent component) {
        if (component.getGenericType() instanceof ParameterizedType list) {
            Type element = list.getActualTypeArguments()[0];
            return (Class<?>) element;
        }
        return component.getType();
    }
}
