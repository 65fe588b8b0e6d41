package dev.stayfixed.telling.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Check boxes for kinds of events. */
record KindChoice(String name, String words) {

    static List<KindChoice> of(Collection<EventKind> kinds) {
        return kinds.stream()
                .map(kind -> new KindChoice(kind.name(), Show.capital(ShopSettings.Units.METRIC.words(kind))))
                .toList();
    }

    /** Those that are checked, of the possible ones; anything else in the field is left out. */
    static Set<EventKind> chosen(Form form, String field, Set<EventKind> possible) {
        Set<EventKind> chosen = EnumSet.noneOf(EventKind.class);
        possible.stream().filter(kind -> form.has(field, kind.name())).forEach(chosen::add);
        return chosen;
    }

    static List<String> names(Collection<EventKind> kinds) {
        return kinds.stream().map(EventKind::name).toList();
    }
}
