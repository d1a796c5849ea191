/// Other items that could do a part's work for a patient.
#pragma once

#include "desk/alternative_parts.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class TableView;
class WrappedLabel;

class AlternativesDialog : public Form {
 public:
  AlternativesDialog(wxWindow* parent, const std::string& introduction,
                     desk::AlternativeParts found);

 private:
  void show_words(const std::string& id);

  desk::AlternativeParts found_;
  desk::Table table_;
  TableView* view_ = nullptr;
  wxTextCtrl* words_ = nullptr;
};

}  // namespace sparewell::desktop
