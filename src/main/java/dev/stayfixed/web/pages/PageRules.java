package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.people.access.Asker;
import dev.stayfixed.telling.Inbox;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.support.BeanDefinitionRegistryPostProcessor;
import org.springframework.beans.factory.support.RootBeanDefinition;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** What holds for every page: which content a browser may load, that forms come from our own pages, and how values are written. */
@Configuration(proxyBeanMethods = false)
class PageRules implements WebMvcConfigurer {

    private static final String PROCESSOR = "requestDataValueProcessor";

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new OnPagesOnly());
    }

    /**
     * Puts the token of {@link FormToken} into every form that a template writes with {@code th:action}. Spring asks for it by its name,
     * and Spring Security has given that name to one of its own, which knows nothing of our forms.
     */
    @Bean
    static BeanDefinitionRegistryPostProcessor tokensIntoForms() {
        return registry -> {
            if (registry.containsBeanDefinition(PROCESSOR)) {
                registry.removeBeanDefinition(PROCESSOR);
            }
            registry.registerBeanDefinition(PROCESSOR, new RootBeanDefinition(FormToken.IntoForms.class));
        };
    }

    private static final class OnPagesOnly implements HandlerInterceptor {

        @Override
        public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
            if (handler instanceof HandlerMethod method
                    && AnnotatedElementUtils.hasAnnotation(method.getBeanType(), TechnicianPage.class)) {
                PageHeaders.protect(response);
                FormToken.check(request, response);
            }
            return true;
        }
    }

    /** Gives every page the shop's way to write times and units. */
    @ControllerAdvice(annotations = TechnicianPage.class)
    static class InTheShopsWay {

        private final Shops shops;
        private final Inbox inbox;
        private final Clock clock;

        InTheShopsWay(Shops shops, Inbox inbox, Clock clock) {
            this.shops = shops;
            this.inbox = inbox;
            this.clock = clock;
        }

        /** Messages that nobody has read, for the head of each page. */
        @ModelAttribute("unread")
        long unread() {
            return Asker.now().isPresent() ? inbox.unread() : 0;
        }

        /** Who looks at the page; none where people sign in. */
        @ModelAttribute("asker")
        @Nullable
        Asker asker() {
            return Asker.now().orElse(null);
        }

        /** A stranger is shown nothing of a shop, not even its name. */
        @ModelAttribute("show")
        Show show() {
            return new Show(Asker.now().isPresent() ? shops.settings() : Show.OF_NO_SHOP, clock.instant());
        }

        /** What was just done, named in the address after a form was sent. */
        @ModelAttribute("said")
        String said(@RequestParam(defaultValue = "") String said) {
            return Said.of(said).map(ShopSettings.Units.METRIC::words).orElse("");
        }
    }
}
