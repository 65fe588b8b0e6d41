package dev.stayfixed.customer;

import dev.stayfixed.platform.http.PublicUrl;
import java.net.URI;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Where a phone finds the service. */
@Component
public class LinkAddress {

    private final PublicUrl publicUrl;

    LinkAddress(PublicUrl publicUrl) {
        this.publicUrl = publicUrl;
    }

    /**
     * The address of the page that a token opens.
     *
     * @param reached under which the request at hand reached the service; used where none is configured
     */
    public String of(String token, String reached) {
        return to("/d/" + token, reached);
    }

    /** Likewise of another page of the service. */
    public String to(String path, String reached) {
        return publicUrl.stated().orElse(reached) + path;
    }

    /** What is wrong with an address that goes on paper. */
    public Optional<AddressDoubt> warning(String address) {
        URI uri = URI.create(address);
        String host = String.valueOf(uri.getHost());
        if (host.equals("localhost") || host.startsWith("127.") || host.equals("[::1]")) {
            return Optional.of(AddressDoubt.THIS_MACHINE_ONLY);
        }
        return "https".equals(uri.getScheme()) ? Optional.empty() : Optional.of(AddressDoubt.NO_HTTPS);
    }
}
