package dev.stayfixed.platform.http;

import org.springframework.context.annotation.Configuration;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.http.converter.HttpMessageConverters;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Values are read and written as JSON. A library that brings along a reader of another format would else open the interface to it,
 * with other rules than ours: YAML with a key twice, for one.
 */
@Configuration(proxyBeanMethods = false)
class JsonOnly implements WebMvcConfigurer {

    @Override
    public void configureMessageConverters(HttpMessageConverters.ServerBuilder builder) {
        builder.configureMessageConvertersList(all -> all.removeIf(JsonOnly::isYaml));
    }

    private static boolean isYaml(HttpMessageConverter<?> converter) {
        return converter.getSupportedMediaTypes().stream().anyMatch(MediaType.APPLICATION_YAML::includes);
    }
}
