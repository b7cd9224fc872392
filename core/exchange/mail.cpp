#include "core/exchange/mail.h"

#include <curl/curl.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstring>
#include <memory>
#include <mutex>

#include "core/base/text.h"

namespace fettle {

namespace {

struct Sending {
    std::string_view rest;  // of the message
    std::string refusal;    // of the server
    const CancelToken* cancel = nullptr;
};

std::size_t giveText(char* to, std::size_t size, std::size_t count, void* of) {
    auto& sending = *static_cast<Sending*>(of);
    const std::size_t bytes = std::min(size * count, sending.rest.size());
    std::memcpy(to, sending.rest.data(), bytes);
    sending.rest.remove_prefix(bytes);
    return bytes;
}

// The reply that refused something; its farewell is not the reason.
std::size_t takeReply(char* line, std::size_t size, std::size_t count, void* of) {
    const std::string_view text = trimmed({line, size * count});
    if (!text.empty() && (text[0] == '4' || text[0] == '5')) static_cast<Sending*>(of)->refusal = text;
    return size * count;
}

int mayGoOn(void* of, curl_off_t, curl_off_t, curl_off_t, curl_off_t) {
    return static_cast<Sending*>(of)->cancel->cancelled() ? 1 : 0;
}

bool isThisComputer(const std::string& host) {
    return host == "localhost" || host == "::1" || host == "127.0.0.1";
}

std::string urlOf(const MailServer& server) {
    const bool six = server.host.find(':') != server.host.npos;
    return fmt::format("{}://{}:{}", server.security == "tls" ? "smtps" : "smtp",
                       six ? "[" + server.host + "]" : server.host, server.port);
}

void setSecurity(CURL* curl, const MailServer& server) {
    curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "smtp,smtps");
    curl_easy_setopt(curl, CURLOPT_PROXY, "");
    curl_easy_setopt(curl, CURLOPT_USE_SSL,
                     long(server.security == "none" ? CURLUSESSL_NONE : CURLUSESSL_ALL));
    curl_easy_setopt(curl, CURLOPT_SSL_VERIFYPEER, 1L);
    curl_easy_setopt(curl, CURLOPT_SSL_VERIFYHOST, 2L);
    curl_easy_setopt(curl, CURLOPT_SSLVERSION, long(CURL_SSLVERSION_TLSv1_2));
    if (!server.caFile.empty()) {
        curl_easy_setopt(curl, CURLOPT_CAINFO, server.caFile.c_str());
        curl_easy_setopt(curl, CURLOPT_CAPATH, nullptr);
    }
    if (server.user.empty()) return;
    curl_easy_setopt(curl, CURLOPT_USERNAME, server.user.c_str());
    curl_easy_setopt(curl, CURLOPT_PASSWORD, server.password.c_str());
}

void setLimits(CURL* curl, const MailServer& server, Sending& sending) {
    curl_easy_setopt(curl, CURLOPT_NOSIGNAL, 1L);
    curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT, long(std::min(server.timeoutS, 15)));
    curl_easy_setopt(curl, CURLOPT_TIMEOUT, long(server.timeoutS));
    curl_easy_setopt(curl, CURLOPT_SERVER_RESPONSE_TIMEOUT, long(server.timeoutS));
    curl_easy_setopt(curl, CURLOPT_NOPROGRESS, 0L);
    curl_easy_setopt(curl, CURLOPT_XFERINFOFUNCTION, &mayGoOn);
    curl_easy_setopt(curl, CURLOPT_XFERINFODATA, &sending);
    curl_easy_setopt(curl, CURLOPT_HEADERFUNCTION, &takeReply);
    curl_easy_setopt(curl, CURLOPT_HEADERDATA, &sending);
    curl_easy_setopt(curl, CURLOPT_READFUNCTION, &giveText);
    curl_easy_setopt(curl, CURLOPT_READDATA, &sending);
    curl_easy_setopt(curl, CURLOPT_UPLOAD, 1L);
}

constexpr int kTokenMs = 50;  // how often the token is looked at

// As curl_easy_perform, but ends as soon as the token says so, whatever the server or a name server does.
CURLcode perform(CURL* curl, const CancelToken& cancel) {
    const std::unique_ptr<CURLM, CURLMcode (*)(CURLM*)> multi(curl_multi_init(), curl_multi_cleanup);
    if (!multi || curl_multi_add_handle(multi.get(), curl) != CURLM_OK) return CURLE_FAILED_INIT;
    int running = 1;
    while (running > 0 && !cancel.cancelled()) {
        if (curl_multi_perform(multi.get(), &running) != CURLM_OK) break;
        if (running > 0) curl_multi_poll(multi.get(), nullptr, 0, kTokenMs, nullptr);
    }
    CURLcode code = cancel.cancelled() ? CURLE_ABORTED_BY_CALLBACK : CURLE_FAILED_INIT;
    int left = 0;
    while (const CURLMsg* message = curl_multi_info_read(multi.get(), &left))
        if (message->msg == CURLMSG_DONE) code = message->data.result;
    if (running > 0) curl_easy_setopt(curl, CURLOPT_QUICK_EXIT, 1L);  // a name being looked up is not awaited
    curl_multi_remove_handle(multi.get(), curl);
    return code;
}

bool isCertificate(CURLcode code) {
    return code == CURLE_PEER_FAILED_VERIFICATION || code == CURLE_SSL_CACERT_BADFILE ||
           code == CURLE_SSL_ISSUER_ERROR;
}

MailOutcome refused(CURLcode code, long reply, const Sending& sending, const MailServer& server,
                    const std::string& detail) {
    const std::string where = fmt::format("mail server {} port {}", server.host, server.port);
    const auto with = [&](const std::string& what) { return where + ": " + what; };
    if (code == CURLE_ABORTED_BY_CALLBACK) return {false, false, with("stopped on request")};
    if (isCertificate(code))
        return {false, true,
                with("its certificate is not trusted, nothing was sent: " + oneLine(detail, 200))};
    if (code == CURLE_USE_SSL_FAILED)
        return {false, true, with("does not offer encryption (STARTTLS), nothing was sent")};
    if (code == CURLE_LOGIN_DENIED)
        return {false, true,
                with(fmt::format("refuses the login of {}: {}", oneLine(server.user, 100),
                                 oneLine(sending.refusal, 200)))};
    if (reply >= 400 && reply < 600)
        return {false, reply >= 500, with("answers " + oneLine(sending.refusal, 300))};
    if (code == CURLE_OPERATION_TIMEDOUT) return {false, false, with("does not answer in time")};
    return {false, false, with(oneLine(detail, 300))};
}

}  // namespace

Status checkMailServer(const MailServer& server) {
    const auto bad = [](const std::string& rule) {
        return fail(ErrorKind::Invalid, "", "mail server", rule);
    };
    const bool host = !server.host.empty() && server.host.size() <= 253 &&
                      std::all_of(server.host.begin(), server.host.end(), [](unsigned char c) {
                          return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                                 c == '.' || c == '-' || c == ':';
                      });
    if (!host) return bad("\"" + oneLine(server.host, 100) + "\" is no name of a computer");
    if (server.port < 1 || server.port > 65535) return bad(fmt::format("port {} is none", server.port));
    if (server.timeoutS < 5 || server.timeoutS > 600) return bad("is waited for 5 to 600 s");
    if (server.security == "none" && (!isThisComputer(server.host) || !server.user.empty()))
        return bad("is spoken to in clear only on this computer and without a login; choose starttls or tls");
    if (server.security != "starttls" && server.security != "tls" && server.security != "none")
        return bad("security is starttls, tls or none, not \"" + oneLine(server.security, 40) + "\"");
    if (std::any_of(server.user.begin(), server.user.end(), [](unsigned char c) { return c < 0x20; }))
        return bad("a login name has no control characters");
    return {};
}

MailOutcome sendMail(const MailServer& server, const std::string& from, const std::string& to,
                     const std::string& text, const CancelToken& cancel) {
    static std::once_flag once;
    std::call_once(once, [] { curl_global_init(CURL_GLOBAL_DEFAULT); });
    if (auto good = checkMailServer(server); !good) return {false, true, good.error().sentence()};
    const std::unique_ptr<CURL, void (*)(CURL*)> curl(curl_easy_init(), curl_easy_cleanup);
    if (!curl) return {false, false, "mail cannot be prepared"};
    Sending sending{text, {}, &cancel};
    char detail[CURL_ERROR_SIZE] = "";
    const std::unique_ptr<curl_slist, void (*)(curl_slist*)> receivers(curl_slist_append(nullptr, to.c_str()),
                                                                       curl_slist_free_all);
    curl_easy_setopt(curl.get(), CURLOPT_URL, urlOf(server).c_str());
    curl_easy_setopt(curl.get(), CURLOPT_MAIL_FROM, from.c_str());
    curl_easy_setopt(curl.get(), CURLOPT_MAIL_RCPT, receivers.get());
    curl_easy_setopt(curl.get(), CURLOPT_ERRORBUFFER, detail);
    setSecurity(curl.get(), server);
    setLimits(curl.get(), server, sending);
    const CURLcode code = perform(curl.get(), cancel);
    if (code == CURLE_OK) return {true, false, {}};
    long reply = 0;
    curl_easy_getinfo(curl.get(), CURLINFO_RESPONSE_CODE, &reply);
    return refused(code, reply, sending, server, *detail ? detail : curl_easy_strerror(code));
}

}  // namespace fettle
