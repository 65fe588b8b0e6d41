package dev.stayfixed.platform;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import org.springframework.boot.jackson.autoconfigure.JsonFactoryBuilderCustomizer;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdScalarDeserializer;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.module.SimpleModule;

/** What properties cannot say about the JSON that is taken: no duplicate keys, no control characters, finite numbers, real times. */
@Configuration(proxyBeanMethods = false)
class JsonRules {

    @Bean
    JsonFactoryBuilderCustomizer noDuplicateKeys() {
        return factory -> factory.enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION);
    }

    @Bean
    JsonMapperBuilderCustomizer strictValues() {
        return mapper -> mapper.addModule(new SimpleModule("strict values")
                        .addDeserializer(String.class, new CleanText())
                        .addDeserializer(Double.class, new FiniteNumber())
                        .addDeserializer(Instant.class, new RealTime()))
                .changeDefaultNullHandling(nulls -> JsonSetter.Value.construct(Nulls.DEFAULT, Nulls.FAIL));
    }

    private abstract static class Strict<T> extends StdScalarDeserializer<T> {

        private final Class<T> type;

        Strict(Class<T> type) {
            super(type);
            this.type = type;
        }

        T refuse(JsonParser parser, String found, String expected) {
            throw MismatchedInputException.from(parser, type, "found " + found + ", expected " + expected);
        }

        String found(JsonParser parser) {
            return parser.currentToken() == JsonToken.START_OBJECT
                    ? "an object"
                    : parser.currentToken() == JsonToken.START_ARRAY ? "a list" : parser.getString();
        }
    }

    /** Text without control characters (line ends and tabs are fine) and without halves of surrogate pairs. */
    private static final class CleanText extends Strict<String> {

        CleanText() {
            super(String.class);
        }

        @Override
        public String deserialize(JsonParser parser, DeserializationContext context) {
            if (!parser.hasToken(JsonToken.VALUE_STRING)) {
                return refuse(parser, found(parser), "text in quotes");
            }
            String text = parser.getString();
            return PlainText.flaw(text)
                    .map(flaw -> refuse(parser, flaw, "text without control characters"))
                    .orElse(text);
        }
    }

    private static final class FiniteNumber extends Strict<Double> {

        FiniteNumber() {
            super(Double.class);
        }

        @Override
        public Double deserialize(JsonParser parser, DeserializationContext context) {
            if (!parser.currentToken().isNumeric()) {
                return refuse(parser, found(parser), "a number");
            }
            double value = parser.getDoubleValue();
            return Double.isFinite(value) ? value : refuse(parser, parser.getString(), "a number of at most 1.79e308");
        }
    }

    /** ISO 8601 with an offset, between the years 1990 and 2100; kept to the millisecond. */
    private static final class RealTime extends Strict<Instant> {

        private static final String FORM =
                "a time with its offset from UTC between the years 1990 and 2100, such as 2026-03-14T08:15:00+01:00";

        RealTime() {
            super(Instant.class);
        }

        @Override
        public Instant deserialize(JsonParser parser, DeserializationContext context) {
            if (!parser.hasToken(JsonToken.VALUE_STRING)) {
                return refuse(parser, found(parser), FORM);
            }
            String text = parser.getString();
            try {
                OffsetDateTime time = OffsetDateTime.parse(text, DateTimeFormatter.ISO_OFFSET_DATE_TIME)
                        .withOffsetSameInstant(ZoneOffset.UTC);
                return time.getYear() >= 1990 && time.getYear() <= 2100
                        ? time.toInstant().truncatedTo(ChronoUnit.MILLIS)
                        : refuse(parser, text, FORM);
            } catch (DateTimeException e) {
                return refuse(parser, text, FORM);
            }
        }
    }
}
