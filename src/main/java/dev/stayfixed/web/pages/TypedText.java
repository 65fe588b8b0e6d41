package dev.stayfixed.web.pages;

import dev.stayfixed.platform.PlainText;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.core.convert.ConversionFailedException;
import org.springframework.core.convert.converter.Converter;
import org.springframework.core.convert.converter.ConverterFactory;
import org.springframework.core.convert.support.DefaultConversionService;
import org.springframework.core.convert.support.GenericConversionService;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** From what people type to values: numbers with either decimal mark, times in the shop's zone, ticks. */
final class TypedText extends GenericConversionService {

    private static final String NUMBER = "[+-]?(\\d{1,12}([.,]\\d{0,9})?|[.,]\\d{1,9})";

    TypedText(ZoneId zone) {
        DefaultConversionService.addCollectionConverters(this);
        addConverter(String.class, String.class, TypedText::plain);
        addConverter(String.class, Double.class, TypedText::number);
        addConverter(String.class, Integer.class, TypedText::whole);
        addConverter(String.class, Boolean.class, TypedText::tick);
        addConverter(String.class, UUID.class, TypedText::id);
        addConverter(String.class, Instant.class, text -> time(text, zone));
        addConverter(String.class, JsonNode.class, TypedText::numberOrWord);
        addConverterFactory(new ToChoice());
    }

    /** What was typed is not of the form that its field takes. */
    static final class Unreadable extends IllegalArgumentException {

        private final String wanted;
        private final @Nullable String found;

        private Unreadable(String wanted, @Nullable String found) {
            super(wanted);
            this.wanted = wanted;
            this.found = found;
        }

        /** The key of the text that says what is wanted. */
        String wanted() {
            return wanted;
        }

        /** What stands in the way; null for all of what was typed. */
        @Nullable
        String found() {
            return found;
        }
    }

    /**
     * The value.
     *
     * @param typed not blank
     * @throws Unreadable where it is no such value
     */
    <T> @Nullable T read(String typed, Class<T> type) {
        try {
            return convert(typed.strip(), type);
        } catch (ConversionFailedException e) {
            if (e.getCause() instanceof Unreadable unreadable) {
                throw unreadable;
            }
            throw e;
        }
    }

    private static String plain(String text) {
        PlainText.flaw(text).ifPresent(flaw -> {
            throw new Unreadable("web.wanted.plain-text", flaw);
        });
        return text;
    }

    static Double number(String text) {
        if (!text.matches(NUMBER)) {
            throw new Unreadable("web.wanted.number", null);
        }
        return Double.valueOf(text.replace(',', '.'));
    }

    private static Integer whole(String text) {
        double number = number(text);
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw new Unreadable("web.wanted.whole-number", null);
        }
        return (int) number;
    }

    private static JsonNode numberOrWord(String text) {
        return text.matches(NUMBER)
                ? JsonNodeFactory.instance.numberNode(number(text))
                : JsonNodeFactory.instance.stringNode(plain(text));
    }

    private static Boolean tick(String text) {
        return switch (text) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new Unreadable("web.wanted.choice", null);
        };
    }

    private static UUID id(String text) {
        if (!text.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")) {
            throw new Unreadable("web.wanted.choice", null);
        }
        return UUID.fromString(text);
    }

    private static Instant time(String text, ZoneId zone) {
        try {
            LocalDateTime local = LocalDateTime.parse(text);
            if (local.getYear() >= 1990 && local.getYear() <= 2100) {
                return local.atZone(zone).toInstant();
            }
        } catch (DateTimeException noTime) {
            throw new Unreadable("web.wanted.time", null);
        }
        throw new Unreadable("web.wanted.time", null);
    }

    /** One of the constants by its name. */
    @SuppressWarnings("rawtypes")
    private static final class ToChoice implements ConverterFactory<String, Enum> {

        @Override
        public <E extends Enum> Converter<String, E> getConverter(Class<E> type) {
            return text -> Arrays.stream(type.getEnumConstants())
                    .filter(constant -> constant.name().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new Unreadable("web.wanted.choice", null));
        }
    }
}
