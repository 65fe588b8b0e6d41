package dev.stayfixed.telling.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.web.pages.Show;
import java.util.Collection;
import java.util.List;

/** Check boxes for kinds of events. */
record KindChoice(String name, String words) {

    static List<KindChoice> of(Collection<EventKind> kinds) {
        return kinds.stream()
                .map(kind -> new KindChoice(kind.name(), Show.capital(ShopSettings.Units.METRIC.words(kind))))
                .toList();
    }

    static List<String> names(Collection<EventKind> kinds) {
        return kinds.stream().map(EventKind::name).toList();
    }
}
