package dev.stayfixed.platform.http;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The names by which this service is called. A port is no part of a name: who forwards one to ours does no harm. */
final class OwnNames {

    private static final Set<String> ALWAYS = Set.of("localhost", "127.0.0.1", "[::1]");

    private final Set<String> names;

    private OwnNames(Set<String> names) {
        this.names = names;
    }

    /**
     * All names.
     *
     * @param address on which the service listens; empty where it listens on all that this machine has
     * @throws IllegalArgumentException naming the setting that holds no name
     */
    static OwnNames of(Hosts hosts, PublicUrl url, String address) {
        String bound = address.contains(":") ? "[" + address + "]" : address;
        Stream<String> stated =
                hosts.hosts().stream().filter(host -> !host.isBlank()).map(OwnNames::named);
        return new OwnNames(Stream.of(
                        ALWAYS.stream(),
                        Stream.of(bound).filter(name -> !name.isEmpty()),
                        url.stated().map(OwnNames::publicName).stream(),
                        stated)
                .flatMap(name -> name)
                .collect(Collectors.toUnmodifiableSet()));
    }

    private static String named(String host) {
        return Authority.of(host.strip())
                .filter(name -> name.port().isEmpty())
                .map(Authority::host)
                .orElseThrow(() -> new IllegalArgumentException("stayfixed.hosts: found \"" + host
                        + "\", expected names or addresses without scheme and port, such as workshop.local, 192.168.1.5 or"
                        + " [fd00::5]"));
    }

    private static String publicName(String url) {
        return Origin.ofAddress(url)
                .map(Origin::host)
                .orElseThrow(() -> new IllegalArgumentException("stayfixed.public-url: found \"" + url
                        + "\", expected an address with its scheme, such as https://cars.example"));
    }

    boolean has(Authority called) {
        return names.contains(called.host());
    }
}
