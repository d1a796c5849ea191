/// Asks which written orders have been sent to their suppliers.
#pragma once

#include <vector>

#include "desk/draft_orders.hpp"
#include "desktop/dialogs/form.hpp"

class wxCheckListBox;

namespace sparewell::desktop {

class SentDialog : public Form {
 public:
  SentDialog(wxWindow* parent, std::vector<desk::DraftOrder> drafts);
  [[nodiscard]] std::vector<std::string> numbers() const;

 private:
  std::vector<desk::DraftOrder> drafts_;
  wxCheckListBox* list_ = nullptr;
};

}  // namespace sparewell::desktop
