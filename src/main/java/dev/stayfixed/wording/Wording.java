package dev.stayfixed.wording;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Puts what the rules say into the words of a language and the units of a reader. People's own words stay as they are. */
public final class Wording {

    private static final String ENGLISH = "reasons";

    /** One file a language, with everything that is said in it; what it lacks is English. */
    private static final String LANGUAGES = "languages/";

    private static final Map<Locale, Wording> IN_METRIC_UNITS = new ConcurrentHashMap<>();
    private static final Map<Locale, Wording> IN_US_UNITS = new ConcurrentHashMap<>();

    /** As the interface answers beside the values. */
    public static final Wording METRIC = new Wording(Locale.ENGLISH, false);

    /** "{from}", or "{from.number}" for a quantity without its unit. */
    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)(\\.number)?}");

    private static final int MOST_DECIMALS = 6;

    private final Locale locale;
    private final boolean us;
    private final ResourceBundle english;
    private final ResourceBundle texts;
    private final Part.Cases<String> worded = new Worded();

    private Wording(Locale locale, boolean us) {
        this.us = us;
        this.english = file(ENGLISH);
        this.texts = of(locale).orElse(english);
        this.locale = texts == english ? Locale.ENGLISH : locale;
    }

    private static Optional<ResourceBundle> of(Locale language) {
        try {
            return Optional.of(language.getLanguage())
                    .filter(code -> !code.isEmpty() && !code.equals(Locale.ENGLISH.getLanguage()))
                    .map(code -> file(LANGUAGES + code));
        } catch (MissingResourceException nothingOfIt) {
            return Optional.empty();
        }
    }

    private static ResourceBundle file(String name) {
        return ResourceBundle.getBundle(
                name,
                Locale.ROOT,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    private ResourceBundle with(String key) {
        return texts.containsKey(key) ? texts : english;
    }

    private String text(String key) {
        return with(key).getString(key);
    }

    /** In this language, or in English where there is no file of it. */
    public static Wording in(Locale language, boolean us) {
        return us
                ? IN_US_UNITS.computeIfAbsent(language, l -> new Wording(l, true))
                : IN_METRIC_UNITS.computeIfAbsent(language, l -> new Wording(l, false));
    }

    /** In words and with units. */
    public String words(Part said) {
        return said.match(worded);
    }

    /** Each part in words. */
    private final class Worded implements Part.Cases<String> {

        @Override
        public String kind(Kind kind) {
            return text(kind.key());
        }

        @Override
        public String reason(Reason reason) {
            return reason.kind() instanceof Shape shape ? shaped(shape, reason.parts()) : text(reason);
        }

        @Override
        public String quantity(Quantity quantity) {
            return (number(quantity) + " " + unit(quantity.unit())).stripTrailing();
        }

        @Override
        public String count(Part.Count count) {
            return Long.toString(count.number());
        }

        @Override
        public String hex(Part.Hex hex) {
            return "%02X".formatted(hex.number());
        }

        @Override
        public String day(Part.Day day) {
            return Wording.this.time("Day", day.at());
        }

        @Override
        public String minute(Part.Minute minute) {
            return Wording.this.time("Minute", minute.at());
        }

        @Override
        public String verbatim(Part.Verbatim verbatim) {
            return verbatim.text();
        }

        @Override
        public String time(Part.Time time) {
            return time.form() == Part.Time.Form.LENGTH ? length(time.millis()) : moment(time.millis());
        }

        @Override
        public String timeOf(Part.TimeOf time) {
            return Wording.this.timeOf(time.found(), time.needed());
        }
    }

    private String time(String pattern, Instant at) {
        return DateTimeFormatter.ofPattern(text(pattern), locale)
                .withZone(ZoneOffset.UTC)
                .format(at);
    }

    private String text(Reason reason) {
        Kind kind = reason.kind();
        String one = kind.key() + ".one";
        boolean single = reason.parts().stream().anyMatch(p -> p instanceof Part.Count count && count.number() == 1);
        String text = text(single && with(kind.key()).containsKey(one) ? one : kind.key());
        List<String> names = kind.parts();
        return filled(text, place -> {
            Part part = reason.parts().get(names.indexOf(place.group(1)));
            return place.group(2) != null && part instanceof Quantity quantity ? number(quantity) : words(part);
        });
    }

    private String shaped(Shape shape, List<Part> parts) {
        String text = text(shape.key());
        if (shape == Shape.SENTENCE) {
            String what = words(parts.get(0));
            return filled(text, place -> Character.toUpperCase(what.charAt(0)) + what.substring(1));
        }
        return parts.stream()
                .map(this::words)
                .reduce((before, next) -> pair(text, before, next))
                .orElse("");
    }

    private static String pair(String text, String first, String second) {
        return filled(text, place -> place.group(1).equals("first") ? first : second);
    }

    private static String filled(String text, Function<MatchResult, String> part) {
        return PLACE.matcher(text).replaceAll(place -> Matcher.quoteReplacement(part.apply(place)));
    }

    private String unit(Unit unit) {
        String metric = unit.symbol();
        String shown = scale(unit).unit();
        return shown.equals(metric) ? words(unit) : shown;
    }

    private Scale scale(Unit unit) {
        return us ? Scale.us(unit.symbol()) : Scale.metric(unit.symbol());
    }

    private String number(Quantity quantity) {
        String plain = rounded(quantity.value(), quantity);
        double limit = quantity.beside().orElse(quantity.value());
        if (limit == quantity.value() || !plain.equals(rounded(limit, quantity))) {
            return local(plain);
        }
        Scale scale = scale(quantity.unit());
        for (int decimals = 2; decimals <= MOST_DECIMALS; decimals++) {
            BigDecimal precise =
                    BigDecimal.valueOf(scale.shown(quantity.value())).setScale(decimals, RoundingMode.HALF_EVEN);
            if (precise.compareTo(BigDecimal.valueOf(scale.shown(limit)).setScale(decimals, RoundingMode.HALF_EVEN))
                    != 0) {
                return local(precise.toPlainString());
            }
        }
        return local(plain);
    }

    private String rounded(double value, Quantity quantity) {
        RoundingMode half = value < 0 ? RoundingMode.HALF_DOWN : RoundingMode.HALF_UP;
        BigDecimal metric = BigDecimal.valueOf(value).setScale(quantity.decimals(), half);
        Scale scale = scale(quantity.unit());
        boolean whole = metric.stripTrailingZeros().scale() <= 0;
        BigDecimal shown = scale.unit().equals(quantity.unit().symbol()) ? metric : inSteps(scale, value, whole);
        return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    }

    /** What is a whole number in metric units is one here, as far as the unit allows. */
    private static BigDecimal inSteps(Scale scale, double value, boolean whole) {
        double shown = scale.shown(value);
        double coarse = switch (scale.unit()) {
            case "inHg" -> 0.1;
            case "ft" -> 10;
            default -> 1;
        };
        double step = !whole || Math.abs(shown) < coarse ? Math.min(coarse, 0.1) : coarse;
        return BigDecimal.valueOf(Math.rint(shown / step) * step).setScale(1, RoundingMode.HALF_EVEN);
    }

    private String local(String number) {
        return number.replace('.', DecimalFormatSymbols.getInstance(locale).getDecimalSeparator());
    }

    /** Seconds up to two minutes, then minutes and seconds, then hours and minutes. */
    private String length(long millis) {
        double seconds = millis / 1000.0;
        if (seconds < 120) {
            return words(Quantity.of(seconds, Unit.SECOND).beside(0));
        }
        long whole = Math.round(seconds);
        return whole < 7_200
                ? two(whole / 60, Unit.MINUTE, whole % 60, Unit.SECOND)
                : two(whole / 3_600, Unit.HOUR, whole % 3_600 / 60, Unit.MINUTE);
    }

    private String two(long large, Unit unit, long small, Unit smaller) {
        return large + " " + words(unit) + (small == 0 ? "" : " " + small + " " + words(smaller));
    }

    /** In seconds where the two would else read the same. */
    private String timeOf(long found, long needed) {
        String text = text(Shape.OUT_OF.key());
        String is = length(found);
        String wanted = length(needed);
        return found == needed || !is.equals(wanted)
                ? pair(text, is, wanted)
                : pair(
                        text,
                        words(Quantity.of(found / 1000.0, Unit.SECOND).beside(needed / 1000.0)),
                        words(Quantity.of(needed / 1000.0, Unit.SECOND)));
    }

    /** From the first row of the drive on: 12:31, or 1:02:31. */
    private static String moment(long millis) {
        long seconds = millis / 1000;
        return seconds < 3_600
                ? String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3_600, seconds / 60 % 60, seconds % 60);
    }
}
