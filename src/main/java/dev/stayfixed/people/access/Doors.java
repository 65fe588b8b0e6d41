package dev.stayfixed.people.access;

import java.util.List;
import java.util.Set;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/**
 * What each address needs: the first door that fits a request. It is looked at before anything of the request is read and before
 * anything is looked up, so a refusal says nothing of what there is.
 */
final class Doors {

    private static final Set<String> LOOKING = Set.of("GET", "HEAD", "OPTIONS");

    /** Which methods a door is for. */
    private enum Way {
        ANY,
        LOOK,
        CHANGE;

        boolean is(String method) {
            return this == ANY || (this == LOOK) == LOOKING.contains(method);
        }
    }

    private record Door(Way way, PathPattern pattern, Need need) {}

    private static final List<Door> DOORS = List.of(
            door(Way.ANY, "/sign-in/**", Need.NOTHING),
            door(Way.ANY, "/sign-out", Need.NOTHING),
            door(Way.ANY, "/first-owner", Need.NOTHING),
            door(Way.ANY, "/invitation/{token}", Need.NOTHING),
            door(Way.LOOK, "/pages.css", Need.NOTHING),
            door(Way.LOOK, "/*.js", Need.NOTHING),
            door(Way.LOOK, "/icon.svg", Need.NOTHING),
            door(Way.LOOK, "/favicon.ico", Need.NOTHING),
            door(Way.LOOK, "/webjars/**", Need.NOTHING),
            door(Way.LOOK, "/driver/**", Need.NOTHING),
            door(Way.LOOK, "/problems/**", Need.NOTHING),
            door(Way.ANY, "/error", Need.NOTHING),
            // Health and metrics are at a port of their own only, which belongs on an address that others do not reach.
            door(Way.LOOK, "/actuator/**", Need.NOTHING),
            // The address holds the permission.
            door(Way.ANY, "/d/**", Need.NOTHING),
            door(Way.LOOK, "/r/**", Need.NOTHING),
            door(Way.ANY, "/mail-stop/**", Need.NOTHING),
            door(Way.LOOK, "/calendar/*", Need.NOTHING),
            door(Way.ANY, "/account/**", Need.TO_BE_KNOWN),
            door(Way.ANY, "/settings/**", Need.OWN),
            door(Way.ANY, "/api/v1/webhooks/**", Need.OWN),
            door(Way.ANY, "/api/v1/notification-settings", Need.OWN),
            door(Way.ANY, "/api/v1/calendar-link", Need.OWN),
            door(Way.ANY, "/api/v1/backups", Need.OWN),
            door(Way.CHANGE, "/api/v1/vehicles/*/drives", Need.DRIVES),
            // They store nothing.
            door(Way.CHANGE, "/api/v1/scans", Need.READ),
            door(Way.CHANGE, "/api/v1/logs/proposals", Need.READ),
            door(Way.CHANGE, "/api/v1/reports/check", Need.READ),
            door(Way.CHANGE, "/reports/check", Need.READ),
            door(Way.LOOK, "/**", Need.READ),
            door(Way.CHANGE, "/**", Need.WORK));

    private Doors() {}

    private static Door door(Way way, String pattern, Need need) {
        return new Door(way, PathPatternParser.defaultInstance.parse(pattern), need);
    }

    /** @param path as it was sent, without the query */
    static Need need(String method, String path) {
        PathContainer sent = PathContainer.parsePath(path);
        return DOORS.stream()
                .filter(door -> door.way().is(method) && door.pattern().matches(sent))
                .findFirst()
                .map(Door::need)
                .orElse(Need.OWN);
    }
}
