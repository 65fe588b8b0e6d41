package dev.stayfixed.platform.http;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Collections;
import java.util.List;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.util.NetMaskSet;
import org.apache.catalina.valves.RemoteIpValve;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/**
 * What a proxy says of a request (X-Forwarded-For, -Proto, -Host, -Port) is believed of those that the operator has named, and of nobody
 * else: for anybody else the connection itself says where a request came from, and whether it was encrypted.
 */
final class NamedProxy extends RemoteIpValve {

    private static final String FORWARDED_FOR = "X-Forwarded-For";

    private final NetMaskSet named = new NetMaskSet();

    /** @throws IllegalArgumentException naming what is neither an address nor a network */
    NamedProxy(List<String> proxies) {
        List<String> flaws = named.addAll(String.join(",", proxies));
        if (!flaws.isEmpty()) {
            throw new IllegalArgumentException("stayfixed.proxy: found " + flaws
                    + ", expected addresses or networks, such as 192.0.2.7 or 192.0.2.0/24, separated by commas");
        }
        // Who connects has been looked at before, so what it says is taken whoever it is.
        setInternalProxies(".*");
        setRemoteIpHeader(FORWARDED_FOR);
        setProtocolHeader("X-Forwarded-Proto");
        setHostHeader("X-Forwarded-Host");
        setPortHeader("X-Forwarded-Port");
    }

    @Override
    public void invoke(Request request, Response response) throws IOException, ServletException {
        if (isNamed(request.getRemoteAddr())) {
            keepNearest(request);
            super.invoke(request, response);
        } else {
            getNext().invoke(request, response);
        }
    }

    /** Each proxy adds at the end who came to it; what stands before the first that we do not know, anybody may have written. */
    private void keepNearest(Request request) {
        List<String> said = Collections.list(request.getHeaders(FORWARDED_FOR));
        if (said.isEmpty()) {
            return;
        }
        String[] hops = String.join(",", said).split(",", -1);
        int nearest = hops.length - 1;
        while (nearest > 0 && isNamed(hops[nearest].strip())) {
            nearest--;
        }
        request.getCoyoteRequest().getMimeHeaders().removeHeader(FORWARDED_FOR);
        request.getCoyoteRequest().getMimeHeaders().setValue(FORWARDED_FOR).setString(hops[nearest].strip());
    }

    private boolean isNamed(String address) {
        if (!address.matches("[0-9a-fA-F.:]+")) {
            // Never looked up by name.
            return false;
        }
        try {
            return named.contains(InetAddress.getByName(address));
        } catch (UnknownHostException noAddress) {
            return false;
        }
    }

    /** In front of everything else that Tomcat does with a request; where nobody is named there is none. */
    @Component
    static final class Installed implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

        private final List<String> proxies;

        Installed(ProxySettings settings) {
            this.proxies =
                    settings.proxy().stream().filter(proxy -> !proxy.isBlank()).toList();
        }

        @Override
        public void customize(ConfigurableTomcatWebServerFactory factory) {
            if (!proxies.isEmpty()) {
                factory.addEngineValves(new NamedProxy(proxies));
            }
        }
    }
}
