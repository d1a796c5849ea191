/// The clinic's details.
#pragma once

#include "clinic/clinic.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class ClinicDialog : public Form {
 public:
  ClinicDialog(wxWindow* parent, const ClinicSettings& settings);
  [[nodiscard]] const ClinicSettings& settings() const { return settings_; }

 private:
  void on_ok(wxCommandEvent& event);

  wxTextCtrl* name_ = nullptr;
  wxTextCtrl* ship_to_ = nullptr;
  wxTextCtrl* currency_ = nullptr;
  wxTextCtrl* main_place_ = nullptr;
  wxTextCtrl* target_ = nullptr;
  wxTextCtrl* records_begin_ = nullptr;
  wxTextCtrl* shortage_cost_ = nullptr;
  wxTextCtrl* holding_ = nullptr;
  wxTextCtrl* line_cost_ = nullptr;
  wxTextCtrl* approval_above_ = nullptr;
  wxTextCtrl* billing_begins_ = nullptr;
  wxTextCtrl* papers_begin_ = nullptr;
  ClinicSettings settings_;
};

}  // namespace sparewell::desktop
