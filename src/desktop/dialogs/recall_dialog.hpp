/// A recall: who has it, where it lies, and taking it out of use.
#pragma once

#include <optional>

#include "desk/list_jobs.hpp"
#include "desk/table.hpp"
#include "desktop/dialogs/form.hpp"

class wxButton;
class wxCheckBox;

namespace sparewell::desktop {

class TableView;
class WrappedLabel;

class RecallDialog : public Form {
 public:
  RecallDialog(wxWindow* parent, desk::ClinicFile file, const std::vector<Item>& items);
  /// Whether stock was moved, so that the pages have to be read again.
  [[nodiscard]] bool moved_stock() const { return moved_; }

 private:
  void make_buttons();
  void look_up();
  void show();
  void quarantine();
  void write();
  [[nodiscard]] desk::Names names() const;

  desk::ClinicFile file_;
  desk::Table items_;
  desk::Table touched_;
  std::optional<desk::RecallNotice> notice_;
  bool moved_ = false;
  wxTextCtrl* find_ = nullptr;
  wxTextCtrl* lot_ = nullptr;
  TableView* item_list_ = nullptr;
  TableView* list_ = nullptr;
  wxStaticText* summary_ = nullptr;
  wxCheckBox* names_ = nullptr;
  wxButton* look_up_ = nullptr;
  wxButton* quarantine_ = nullptr;
  wxButton* write_ = nullptr;
};

}  // namespace sparewell::desktop
