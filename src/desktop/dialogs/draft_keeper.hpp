/// Keeps what is typed into a form until it is booked, so that Esc or a crash loses nothing.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <wx/dialog.h>
#include <wx/timer.h>

#include "desk/form_drafts.hpp"

namespace sparewell::desktop {

class DraftKeeper {
 public:
  /// `fields` are text fields, choices, combo boxes and check boxes of the dialog. `key` names the
  /// form and what it is about. An entry that was left is filled in at once.
  DraftKeeper(wxDialog& dialog, std::vector<wxWindow*> fields,
              const std::filesystem::path& clinic_file, std::string key);

  /// What was filled in, in words; "" when nothing was.
  [[nodiscard]] const std::string& words() const { return words_; }
  /// Puts back what the form began with, and forgets the entry.
  void discard();
  /// The entry was booked.
  void booked();
  /// The entry was booked, and the form stays open for the next one.
  void begin_again();

 private:
  void keep();
  [[nodiscard]] std::vector<std::string> typed() const;
  void fill(const std::vector<std::string>& values);

  std::vector<wxWindow*> fields_;
  desk::FormDrafts drafts_;
  std::string key_;
  std::vector<std::string> first_;
  std::string words_;
  wxTimer pause_;
  bool booked_ = false;
};

/// The value of a text field, choice or combo box; of a closed list the English word; "yes" or ""
/// of a check box.
[[nodiscard]] std::string value_of(const wxWindow& field);

}  // namespace sparewell::desktop
