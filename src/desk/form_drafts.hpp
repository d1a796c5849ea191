/// Entries of forms that were left unfinished, by Esc or because the program ended: kept in a file
/// beside the clinic file that its owner alone may read, until they are booked or discarded.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace sparewell::desk {

struct FormDraft {
  std::string at;                    ///< local time, "2026-11-25 14:05"
  std::vector<std::string> answers;  ///< one for each field

  friend bool operator==(const FormDraft&, const FormDraft&) = default;
};

class FormDrafts {
 public:
  /// The drafts of this clinic file are in "PATH.drafts".
  explicit FormDrafts(const std::filesystem::path& clinic_file);

  /// The entry of the form `key` with as many fields; empty when there is none.
  [[nodiscard]] std::optional<FormDraft> find(const std::string& key, std::size_t fields) const;
  /// False when it could not be written; the form goes on without.
  bool keep(const std::string& key, const FormDraft& draft) const;
  /// The file goes with its last draft.
  void discard(const std::string& key) const;

 private:
  std::filesystem::path file_;
};

/// "14:05"; of another day: with its date.
[[nodiscard]] std::string draft_time(const FormDraft& draft, const std::string& today);
/// "Your unfinished entry of 14:05 is filled in."
[[nodiscard]] std::string draft_words(const FormDraft& draft, const std::string& today);

}  // namespace sparewell::desk
