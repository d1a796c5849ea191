#include "desk/form_drafts.hpp"

#include <fstream>

#include <fcntl.h>
#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

using nlohmann::json;

json read(const std::filesystem::path& file) {
  std::ifstream stream{file};
  auto values = json::parse(stream, nullptr, false);
  return values.is_object() ? values : json::object();
}

/// In a new file that takes the place of the old one, so that a crash leaves one of them whole.
bool write(const std::filesystem::path& file, const json& values) {
  const auto text = values.dump(1) + "\n";
  const auto fresh = file.string() + ".new";
  const int out = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW,
                         S_IRUSR | S_IWUSR);
  if (out < 0) return false;
  // A file of that name that was there keeps its own permissions otherwise.
  bool done = ::fchmod(out, S_IRUSR | S_IWUSR) == 0;
  done = done && ::write(out, text.data(), text.size()) == static_cast<ssize_t>(text.size());
  ::close(out);
  std::error_code failed;
  if (done) std::filesystem::rename(fresh, file, failed);
  if (!done || failed) std::filesystem::remove(fresh, failed);
  return done && !failed;
}

}  // namespace

FormDrafts::FormDrafts(const std::filesystem::path& clinic_file)
    : file_{clinic_file.string() + ".drafts"} {}

std::optional<FormDraft> FormDrafts::find(const std::string& key, std::size_t fields) const {
  const auto values = read(file_);
  const auto found = values.find(key);
  if (found == values.end()) return std::nullopt;
  try {
    FormDraft draft{found->at("at").get<std::string>(),
                    found->at("answers").get<std::vector<std::string>>()};
    // A form that has changed since would be filled in wrongly.
    if (draft.answers.size() != fields) return std::nullopt;
    return draft;
  } catch (const json::exception&) {
    return std::nullopt;
  }
}

bool FormDrafts::keep(const std::string& key, const FormDraft& draft) const {
  auto values = read(file_);
  values[key] = {{"at", draft.at}, {"answers", draft.answers}};
  return write(file_, values);
}

void FormDrafts::discard(const std::string& key) const {
  auto values = read(file_);
  if (values.erase(key) == 0) return;
  std::error_code ignored;
  if (values.empty()) {
    std::filesystem::remove(file_, ignored);
  } else {
    write(file_, values);
  }
}

std::string draft_time(const FormDraft& draft, const std::string& today) {
  const auto gap = draft.at.find(' ');
  const bool same_day = gap != std::string::npos && draft.at.substr(0, gap) == today;
  return same_day ? draft.at.substr(gap + 1) : draft.at;
}

std::string draft_words(const FormDraft& draft, const std::string& today) {
  return say("Your unfinished entry of {} is filled in.", draft_time(draft, today));
}

}  // namespace sparewell::desk
