/// What the dialogs have in common: labels beside fields, a sentence above, buttons below.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/dialog.h>
#include <wx/sizer.h>

class wxButton;
class wxChoice;
class wxComboBox;
class wxDirPickerCtrl;
class wxStaticText;
class wxTextCtrl;

namespace sparewell::desktop {

class Form : public wxDialog {
 public:
  /// `across` fields stand side by side.
  Form(wxWindow* parent, const std::string& title, const std::string& intro = {}, int across = 1);

 protected:
  /// `label` has its mnemonic; the field is named after it for screen readers.
  wxTextCtrl* add_text(const std::string& label, const std::string& value, const std::string& help,
                       int lines = 1);
  wxChoice* add_choice(const std::string& label, const std::vector<std::string>& choices,
                       int chosen, const std::string& help);
  /// A choice of a closed list of English words: they are read in the language of the program, and
  /// value_of gives the English one back.
  wxChoice* add_closed(const std::string& label, const std::vector<std::string>& choices,
                       int chosen, const std::string& help);
  /// A text with choices at hand.
  wxComboBox* add_combo(const std::string& label, const std::vector<std::string>& choices,
                        const std::string& value, const std::string& help);
  wxDirPickerCtrl* add_folder(const std::string& label, const std::string& folder,
                              const std::string& help);
  /// A control of the full width, such as a list.
  void add_wide(wxWindow* control, int proportion);
  /// A further button, left of those that end the dialog.
  wxButton* add_action(const std::string& label, std::function<void()> act);
  /// Call last. `go` is the label of the button that Enter presses.
  void finish(const std::string& go, bool with_cancel = true);

 private:
  void add_field(const std::string& label, wxStaticText* text, wxWindow* field,
                 const std::string& help);

  int across_ = 1;
  wxFlexGridSizer* fields_ = nullptr;
  wxBoxSizer* column_ = nullptr;
  std::vector<wxButton*> actions_;
};

}  // namespace sparewell::desktop
