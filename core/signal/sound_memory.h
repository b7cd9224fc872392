// Why: libsndfile reads and writes through calls; these give it memory instead of a file.
// Ownership: SoundSource borrows the body, which must outlive it; both must outlive the SNDFILE opened on
// them. Errors: none; reading beyond the end gives fewer bytes. Thread: one.
#pragma once

#include <sndfile.h>

#include <string>
#include <string_view>

namespace fettle {

// A short head of our own and the bytes of a file behind it, read as one.
class SoundSource {
  public:
    SoundSource(std::string head, std::string_view body) : head_(std::move(head)), body_(body) {}
    SF_VIRTUAL_IO calls() const;

    std::size_t size() const { return head_.size() + body_.size(); }
    std::size_t at() const { return at_; }
    void moveTo(std::size_t at) { at_ = at; }
    std::size_t read(char* to, std::size_t count);

  private:
    std::string head_;
    std::string_view body_;
    std::size_t at_ = 0;
};

// Bytes as they are written; libsndfile goes back to mend its header.
class SoundSink {
  public:
    SF_VIRTUAL_IO calls() const;
    std::string take() { return std::move(bytes_); }

    std::size_t size() const { return bytes_.size(); }
    std::size_t at() const { return at_; }
    void moveTo(std::size_t at) { at_ = at; }
    std::size_t read(char* to, std::size_t count);
    void write(const char* from, std::size_t count);

  private:
    std::string bytes_;
    std::size_t at_ = 0;
};

}  // namespace fettle
