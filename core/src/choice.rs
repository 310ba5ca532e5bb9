//! Choices of one word: the words of the document, in one place each.

/// Declares enums whose variants are one word of the document each.
macro_rules! choices {
    ($($(#[doc = $doc:literal])+ $name:ident { $($(#[doc = $meaning:literal])+ $variant:ident = $word:literal,)+ })+) => {
        $(
            $(#[doc = $doc])+
            #[derive(
                Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash,
                serde::Serialize, schemars::JsonSchema,
            )]
            pub enum $name {
                $($(#[doc = $meaning])+ #[serde(rename = $word)] $variant,)+
            }

            impl $name {
                /// Every choice.
                pub const ALL: &'static [$name] = &[$($name::$variant,)+];

                /// The choice of a word.
                ///
                /// # Errors
                /// [`ErrorKind::UnknownChoice`](crate::ErrorKind::UnknownChoice), with the nearest word where one is near.
                pub fn from_word(word: &str) -> Result<Self, crate::Error> {
                    let found = $name::ALL.iter().copied().find(|choice| choice.word() == word);
                    found.ok_or_else(|| crate::job::unknown_choice(word, &[$($word,)+]))
                }

                /// The word of the document.
                #[must_use]
                pub const fn word(self) -> &'static str {
                    match self { $($name::$variant => $word,)+ }
                }

                /// What it means, in words.
                #[must_use]
                pub const fn meaning(self) -> &'static str {
                    match self { $($name::$variant => concat!($($meaning),+).trim_ascii(),)+ }
                }

                /// The word as it is read: spaces for underscores.
                #[must_use]
                pub fn spoken(self) -> String {
                    self.word().replace('_', " ")
                }
            }

            impl $crate::job::decode::Decode for $name {
                fn decode(place: $crate::job::decode::Place<'_>) -> Result<Self, $crate::Error> {
                    let choice = place.choice(&[$($word,)+])?;
                    let found = $name::from_word(choice.word).map_err(|e| choice.refused(e))?;
                    choice.alone().map(|()| found)
                }
            }
        )+
    };
}
pub(crate) use choices;

/// Declares enums whose variants are one word of the document each, most of them with what the word is about.
macro_rules! alternatives {
    (@holds $choice:ident $name:ident $variant:ident) => {
        $choice.alone().map(|()| $name::$variant)
    };
    (@holds $choice:ident $name:ident $variant:ident $type:ty) => {
        $choice.holds::<$type>().map($name::$variant)
    };
    ($($(#[$meta:meta])+ $name:ident { $($(#[doc = $meaning:literal])+ $variant:ident $(($type:ty))? = $word:literal,)+ })+) => {
        $(
            $(#[$meta])+
            #[derive(Debug, Clone, PartialEq, serde::Serialize, schemars::JsonSchema)]
            pub enum $name {
                $($(#[doc = $meaning])+ #[serde(rename = $word)] $variant $(($type))?,)+
            }

            impl $crate::job::decode::Decode for $name {
                fn decode(place: $crate::job::decode::Place<'_>) -> Result<Self, $crate::Error> {
                    let words = &[$($word,)+];
                    let choice = place.choice(words)?;
                    match choice.word {
                        $($word => $crate::choice::alternatives!(@holds choice $name $variant $($type)?),)+
                        word => Err(choice.refused($crate::job::unknown_choice(word, words))),
                    }
                }
            }
        )+
    };
}
pub(crate) use alternatives;
