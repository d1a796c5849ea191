/// How the files of one folder are written; declared by a person, never guessed.
#pragma once

#include "clinic/date.hpp"

namespace sparewell::exchange {

struct FolderFormat {
  char separator = ',';     ///< ',' or ';' or a tab; a first line "sep=;" in a file overrides it
  char decimal_sign = '.';  ///< '.' or ','
  DatePattern dates;        ///< ISO 8601 unless declared otherwise
};

}  // namespace sparewell::exchange
